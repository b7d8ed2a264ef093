/**
 * Writes a document of each visit, as PDF or as an accessible page. Nothing is signed on the command
 * line: the page says so.
 */
import { join } from 'node:path'
import { z } from 'zod'
import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { present } from '../../shared/engine/plain/present.ts'
import {
	openProtocol,
	type Protocol,
	type ProtocolFile,
} from '../../shared/engine/protocol/protocol.ts'
import { type ClubConsent, consentGivers } from '../../shared/engine/report/club.ts'
import {
	isKind,
	type KindInput,
	type KindName,
	kindNames,
	kinds,
	unnamedClinic,
} from '../../shared/engine/report/kinds.ts'
import { planSchema } from '../../shared/engine/season/plan-file.ts'
import { noDecisions } from '../../shared/engine/visit/decisions.ts'
import { warmPdf } from '../pdf/render.ts'
import { BadInput, readArgs } from './args.ts'
import { namesOfFiles } from './file-names.ts'
import { readAs, readClinic, readEarlier, readProtocol, readVisit } from './files.ts'
import { drawn, makeFolder, pageOf, write } from './report-file.ts'

const text = { type: 'string' } as const
const many = { type: 'string', multiple: true } as const
const options = {
	kind: text,
	out: text,
	'out-dir': text,
	format: text,
	clinic: text,
	protocol: text,
	earlier: many,
	plan: text,
	consent: text,
	member: many,
	audience: text,
	paper: text,
	on: text,
	recipient: text,
}
type Given = ReturnType<typeof readArgs<typeof options>>['option']
/** The options that hold one text. */
type OneText = Exclude<keyof typeof options, 'earlier' | 'member'>

/** @throws BadInput with a line for each thing that is wrong with the options or the files */
export async function reportCommand(args: string[]): Promise<void> {
	const { place, option } = readArgs(args, options, ['VISIT.json...'])
	const asked = askedOf(option, place)
	const common = commonOf(option)
	const files = filesOf(asked, place)
	// the threads that draw begin while the first visits are read
	if (asked.format === 'pdf') warmPdf(files.length)
	if (asked.out.folder !== undefined) makeFolder(asked.out.folder)
	const problems = await inTurns(files, async ({ visitFile, out }) => {
		try {
			write(out, await reportOf({ visitFile, asked, given: option, common }))
			return []
		} catch (error) {
			if (!(error instanceof BadInput)) throw error
			return files.length === 1 ? error.lines : error.lines.map((line) => `${visitFile}: ${line}`)
		}
	})
	if (problems.length > 0) throw new BadInput(problems)
}
/** So many are worked on at once: more would only wait for a thread that draws. */
const atOnce = 4
/** Does all of them, some at once; what does not apply to one never holds up another. */
async function inTurns(
	files: readonly File[],
	doing: (file: File) => Promise<string[]>,
): Promise<string[]> {
	const problems: string[][] = []
	let next = 0
	const turn = async () => {
		for (let at = next++; at < files.length; at = next++)
			problems[at] = await doing(need(files[at], 'a visit file'))
	}
	await Promise.all(Array.from({ length: atOnce }, turn))
	return problems.flat()
}
interface File {
	visitFile: string
	out: string
}
const filesOf = ({ out: { file, folder }, format }: Asked, places: readonly string[]): File[] =>
	folder === undefined
		? places.map((visitFile) => ({ visitFile, out: file }))
		: namesOfFiles(places).map((name, at) => ({
				visitFile: need(places[at], 'a visit file'),
				out: join(folder, `${name}.${format}`),
			}))
/** @throws BadInput where the file cannot be read or the kind does not apply */
async function reportOf(wish: Wish): Promise<Uint8Array | string> {
	const { asked } = wish
	const input = await inputOf(wish)
	const missing = kinds[asked.kind].problems(input)
	if (missing.length > 0) throw new BadInput(missing)
	const document = kinds[asked.kind].compose(input)
	return asked.format === 'html' ? pageOf(document) : drawn(document, input)
}

const papers = ['A4', 'Letter', 'A3'] as const
const audiences = ['clinician', 'club'] as const
const formats = ['pdf', 'html'] as const
interface Asked {
	kind: KindName
	/** A file, or a folder for many. */
	out: { file: string; folder?: undefined } | { file?: undefined; folder: string }
	format: (typeof formats)[number]
	paper: (typeof papers)[number] | undefined
	audience: (typeof audiences)[number] | undefined
	on: string | undefined
}
const isOneOf = <Name extends string>(names: readonly Name[], name: string): name is Name =>
	names.some((known) => known === name)

const ofOneVisit = ['consent', 'plan', 'earlier', 'member'] as const
/** What the options ask for. @throws BadInput naming everything that is wrong with them at once */
function askedOf(given: Given, places: readonly string[]): Asked {
	const problems: string[] = []
	const refuse = (problem: string): undefined => {
		problems.push(problem)
	}
	const choice = <Name extends string>(
		name: OneText,
		allowed: readonly Name[],
		wrong: string,
	): Name | undefined => {
		const value = given[name]
		if (value === undefined || isOneOf(allowed, value)) return value
		return refuse(`--${name}: ${wrong}, given "${value}", allowed: ${allowed.join(', ')}`)
	}
	const kind = given.kind
	if (!isKind(kind)) refuse(kindProblem(kind))
	const out = outOf(given, places, refuse)
	// a consent, a plan or an earlier visit of one player is none of another's
	for (const name of ofOneVisit)
		if (places.length > 1 && given[name] !== undefined)
			refuse(`--${name}: of one visit, given ${places.length} visits, allowed: each visit alone`)
	const paper = choice('paper', papers, 'no such paper for the chart')
	const format = choice('format', formats, 'no such form of a document') ?? formOf(given.out)
	const audience = choice('audience', audiences, 'no such reader')
	const on = given.on
	if (on !== undefined && !z.iso.date().safeParse(on).success)
		refuse(`--on: not a date, given "${on}", allowed: YYYY-MM-DD`)
	if (problems.length > 0 || !isKind(kind) || !out) throw new BadInput(problems)
	return { kind, out, format, paper, audience, on }
}
/** A file for one visit, a folder for any number of them. */
function outOf(
	{ out, 'out-dir': folder }: Given,
	places: readonly string[],
	refuse: (problem: string) => undefined,
): Asked['out'] | undefined {
	if (out && folder)
		return refuse(`--out-dir: not beside --out, given "${folder}", allowed: one of the two`)
	if (folder) return { folder }
	if (!out)
		return refuse(
			'--out: missing, given nothing, allowed: the name of the file to write, or --out-dir ' +
				'with the folder for several',
		)
	if (places.length > 1)
		return refuse(
			`--out: one file for ${places.length} visits, given "${out}", allowed: --out-dir with a folder`,
		)
	return { file: out }
}
function kindProblem(kind: string | undefined): string {
	const wrong =
		kind === undefined
			? 'missing, given nothing'
			: `not a kind this version can write, given "${kind}"`
	return `--kind: ${wrong}, allowed: ${kindNames.join(', ')}`
}

/** Read when it is first asked for, and then kept. */
function readOnce<Read>(read: () => Read): () => Read {
	let held: { value: Read } | undefined
	return () => {
		held ??= { value: read() }
		return held.value
	}
}
/** The files that are the same for every visit. */
const commonOf = (given: Given) => ({
	/** Kept open: its identity is worked out once. */
	protocol: readOnce(() => openProtocol(readProtocol(given.protocol))),
	clinic: readOnce(() => readClinic(given.clinic) ?? unnamedClinic),
})
interface Wish {
	visitFile: string
	asked: Asked
	given: Given
	common: ReturnType<typeof commonOf>
}
/** Reads the files that are named, the visit first. @throws BadInput where one cannot be read */
async function inputOf({ visitFile, asked, given, common }: Wish): Promise<KindInput> {
	const visit = readVisit(visitFile)
	const protocol = common.protocol()
	const earlier = readEarlier(given.earlier, visit)
	const recipient = given.recipient
	const input: KindInput = {
		visit,
		earlier,
		members: (given.member ?? []).map((name) => memberOf(name, protocol)),
		decisions: noDecisions,
		signedAt: undefined,
		draft: true,
		on: asked.on ?? visit.visitDate,
		protocol,
		assessment: assess(visit, earlier, protocol),
		clinic: common.clinic(),
		consents: readConsents(given.consent),
		...present({
			team: visit.player.club || undefined,
			paper: asked.paper,
			audience: asked.audience,
			letter: recipient ? { recipient } : undefined,
			plan: readPlan(given.plan),
		}),
	}
	return asked.kind === 'season-chart' ? withPlan(input, protocol.file) : input
}
function memberOf(name: string, protocol: Protocol) {
	const visit = readVisit(name)
	return { visit, assessment: assess(visit, [], protocol), decisions: noDecisions }
}
/**
 * The consents of a club document: one of this player, or one a player in the order of the visits.
 */
const consentSchema = z.strictObject({
	id: z.string().min(1).max(80),
	purpose: z.enum(['coach', 'squad-club']),
	decision: z.enum(['permit', 'deny']),
	given: z.iso.date(),
	by: z.enum(consentGivers).optional(),
	until: z.iso.date().optional(),
	withdrawn: z.iso.date().optional(),
})
const consentsSchema = z.union([
	consentSchema.transform((consent) => [consent]),
	z.array(consentSchema).max(500),
])
const readConsents = (name: string | undefined): ClubConsent[] =>
	name === undefined ? [] : readAs(consentsSchema, name).map((consent) => present(consent))
const readPlan = (name: string | undefined) =>
	name === undefined ? undefined : readAs(planSchema, name)
/** A season without a plan is planned; the solver is loaded only here. */
async function withPlan(input: KindInput, protocolFile: ProtocolFile): Promise<KindInput> {
	const { visit, earlier = [], plan } = input
	if (plan || !visit.season || (visit.footwear?.length ?? 0) === 0) return input
	const { planSeason } = await import('../solver/plan.ts')
	return { ...input, plan: await planSeason(visit, { protocolFile, earlierVisits: [...earlier] }) }
}

/** A page says what it is by the end of its name. */
const formOf = (out: string | undefined): Asked['format'] =>
	out !== undefined && /\.html?$/i.test(out) ? 'html' : 'pdf'
