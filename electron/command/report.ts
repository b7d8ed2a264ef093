/** Writes a document of a visit as PDF. Nothing is signed on the command line: the page says so. */
import { writeFileSync } from 'node:fs'
import { z } from 'zod'
import { assess } from '../../shared/engine/assess.ts'
import { need } from '../../shared/engine/plain/need.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { openProtocol, type ProtocolFile } from '../../shared/engine/protocol/protocol.ts'
import type { ClubConsent } from '../../shared/engine/report/club.ts'
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
import { nameProblems } from '../../shared/engine/visit/names.ts'
import { problemLine } from '../../shared/engine/visit/problems.ts'
import { renderPdf } from '../pdf/render.ts'
import { BadInput, readArgs } from './args.ts'
import { readAs, readClinic, readEarlier, readProtocol, readVisit } from './files.ts'

const text = { type: 'string' } as const
const many = { type: 'string', multiple: true } as const
const options = {
	kind: text,
	out: text,
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
	const { place, option } = readArgs(args, options, ['VISIT.json'])
	const asked = askedOf(option)
	const input = await inputOf(need(place[0], 'the name of the visit file'), asked, option)
	const missing = kinds[asked.kind].problems(input)
	if (missing.length > 0) throw new BadInput(missing)
	write(asked.out, await drawn(asked.kind, input))
}

const papers = ['A4', 'Letter', 'A3'] as const
const audiences = ['clinician', 'club'] as const
interface Asked {
	kind: KindName
	out: string
	paper: (typeof papers)[number] | undefined
	audience: (typeof audiences)[number] | undefined
	on: string | undefined
}
const isOneOf = <Name extends string>(names: readonly Name[], name: string): name is Name =>
	names.some((known) => known === name)

/** What the options ask for. @throws BadInput naming everything that is wrong with them at once */
function askedOf(given: Given): Asked {
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
	const out = given.out
	if (!out) refuse('--out: missing, given nothing, allowed: the name of the PDF file to write')
	const paper = choice('paper', papers, 'no such paper for the chart')
	const audience = choice('audience', audiences, 'no such reader')
	const on = given.on
	if (on !== undefined && !z.iso.date().safeParse(on).success)
		refuse(`--on: not a date, given "${on}", allowed: YYYY-MM-DD`)
	if (problems.length > 0 || !isKind(kind) || !out) throw new BadInput(problems)
	return { kind, out, paper, audience, on }
}
function kindProblem(kind: string | undefined): string {
	const wrong =
		kind === undefined
			? 'missing, given nothing'
			: `not a kind this version can write, given "${kind}"`
	return `--kind: ${wrong}, allowed: ${kindNames.join(', ')}`
}

/** Reads the files that are named, the visit first. @throws BadInput where one cannot be read */
async function inputOf(visitFile: string, asked: Asked, given: Given): Promise<KindInput> {
	const visit = readVisit(visitFile)
	const protocolFile = readProtocol(given.protocol)
	const earlier = readEarlier(given.earlier, visit)
	const recipient = given.recipient
	const input: KindInput = {
		visit,
		earlier,
		members: (given.member ?? []).map((name) => memberOf(name, protocolFile)),
		decisions: noDecisions,
		signedAt: undefined,
		draft: true,
		on: asked.on ?? visit.visitDate,
		protocol: openProtocol(protocolFile),
		assessment: assess(visit, earlier, protocolFile),
		clinic: readClinic(given.clinic) ?? unnamedClinic,
		consents: readConsents(given.consent),
		...present({
			team: visit.player.club || undefined,
			paper: asked.paper,
			audience: asked.audience,
			letter: recipient ? { recipient } : undefined,
			plan: readPlan(given.plan),
		}),
	}
	return asked.kind === 'season-chart' ? withPlan(input, protocolFile) : input
}
function memberOf(name: string, protocolFile: ProtocolFile) {
	const visit = readVisit(name)
	return { visit, assessment: assess(visit, [], protocolFile), decisions: noDecisions }
}
/**
 * The consents of a club document: one of this player, or one a player in the order of the visits.
 */
const consentSchema = z.strictObject({
	id: z.string().min(1).max(80),
	purpose: z.enum(['coach', 'squad-club']),
	decision: z.enum(['permit', 'deny']),
	given: z.iso.date(),
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

async function drawn(kind: KindName, input: KindInput): Promise<Uint8Array> {
	try {
		return await renderPdf(kinds[kind].compose(input), { logoMustShow: true })
	} catch (error) {
		if (error instanceof Error && error.name === 'UnprintableText')
			throw new BadInput(unprintableLines(input, error.message))
		if (error instanceof Error && error.name === 'BadLogo') throw new BadInput([error.message])
		throw error
	}
}
/** The names that cannot be printed with what to do; where they are not at fault, the text that is. */
function unprintableLines({ visit, members = [] }: KindInput, says: string): string[] {
	const players = [visit, ...members.map((member) => member.visit)].map(({ player }) => player)
	const names = players.flatMap(nameProblems).map(problemLine)
	return names.length > 0 ? [...new Set(names)] : [says]
}
function write(out: string, bytes: Uint8Array): void {
	try {
		writeFileSync(out, bytes)
	} catch (error) {
		throw new BadInput([
			`--out: cannot be written (${(error as NodeJS.ErrnoException).code}), given "${out}", ` +
				'allowed: a file in a folder that exists',
		])
	}
}
