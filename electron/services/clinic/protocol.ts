/**
 * The clinic's protocol: one record per version, and what a change of it would do to the demo
 * visits.
 */
import { readFileSync } from 'node:fs'
import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import { assess, protocolIdentity } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { protocolProblems } from '../../../shared/engine/protocol/check.ts'
import {
	openProtocol,
	type Protocol,
	type ProtocolFile,
	protocolSchema,
} from '../../../shared/engine/protocol/protocol.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'

/** What a record of the kind 'protocol' holds. */
export const protocolRecordSchema = z.strictObject({
	file: protocolSchema,
	why: z.string(),
	by: z.string(),
	at: z.string(),
})
export type ProtocolVersion = z.infer<typeof protocolRecordSchema> & { savedAs: string }

export const getProtocol = (state: State): OutputOf<'protocol.get'> => ({
	file: state.protocol,
	...(state.protocolRecord === undefined ? {} : { savedAs: state.protocolRecord }),
})
/** Newest first. */
export const protocolVersions = (state: State): OutputOf<'protocol.versions'> => ({
	versions: state.protocolVersions.toReversed(),
})

function fileOf(
	state: State,
	{ values, fpiScheme }: Pick<InputOf<'protocol.save'>, 'values' | 'fpiScheme'>,
): ProtocolFile {
	const problems = protocolProblems(values)
	if (problems.length > 0)
		throw new Refusal('A value of the protocol cannot be used. Nothing was changed.', problems)
	const shipped = openProtocol()
	// a value set back to the shipped one is not the clinic's any more
	const own = Object.fromEntries(
		Object.entries(values).filter(
			([key, value]) => shipped.value(key as Parameters<Protocol['value']>[0]) !== value,
		),
	)
	return {
		format: 'lastwright-protocol',
		version: 1,
		id: 'clinic',
		revision: (state.protocolVersions.at(-1)?.file.revision ?? 0) + 1,
		...(fpiScheme === undefined ? {} : { fpiScheme }),
		...(Object.keys(own).length > 0 ? { values: own } : {}),
	}
}
/**
 * Keeps a new version; signed visits keep the one they were signed under. @throws Refusal where
 * another version was saved meanwhile, or a value cannot be used
 */
export function saveProtocol(
	state: State,
	deps: Deps,
	input: InputOf<'protocol.save'>,
): OutputOf<'protocol.save'> {
	if (input.follows !== state.protocolRecord)
		throw new Refusal(
			'The protocol was changed elsewhere since you opened it. Nothing was overwritten: open it ' +
				'again and repeat the change.',
		)
	const file = fileOf(state, input)
	// the rules must be able to work with it before it counts
	effectOf(state.protocol, file)
	const at = deps.now().toISOString()
	const value = { file, why: input.why.trim(), by: state.acts().name, at }
	const savedAs = deps.store.append({
		kind: 'protocol',
		at,
		...(input.follows === undefined ? {} : { follows: input.follows }),
		value,
	})
	state.protocol = file
	state.protocolRecord = savedAs
	state.protocolVersions.push({ ...value, savedAs })
	return { file, savedAs }
}
/** What the findings of the demo visits would say with these values; nothing is saved. */
export function previewProtocol(
	state: State,
	input: InputOf<'protocol.preview'>,
): OutputOf<'protocol.preview'> {
	return effectOf(state.protocol, fileOf(state, input))
}

/**
 * The protocol a signed visit was made under, by its digest; undefined where no version of it is
 * kept here.
 */
export function protocolOfDigest(state: State, digest: string): Protocol | undefined {
	const file = state.protocolVersions
		.map((protocolVersion) => protocolVersion.file)
		.find((one) => protocolIdentity(one).digest === digest)
	return file && openProtocol(file)
}

let demo: { name: string; visit: Visit; earlier: Visit[] }[] | undefined
function demoVisits() {
	const read = z.object({
		players: z.array(
			z.object({
				player: z.object({ givenName: z.string(), familyName: z.string() }),
				visits: z.array(visitSchema),
			}),
		),
	})
	demo ??= read
		.parse(
			JSON.parse(readFileSync(new URL('../../../assets/demo/demo.json', import.meta.url), 'utf8')),
		)
		.players.flatMap(({ player, visits }) =>
			visits.map((visit) => ({
				name: `${player.givenName} ${player.familyName}`,
				visit,
				earlier: visits.filter((one) => one.visitDate < visit.visitDate),
			})),
		)
	return demo
}
const saysOf = (assessment: Assessment): Set<string> =>
	new Set([
		...assessment.findings.map((finding) => finding.says),
		...[...assessment.footwear.target.seek, ...assessment.footwear.target.avoid].map(
			(wish) => wish.says,
		),
	])
/** @throws Refusal where the rules cannot work with the new file */
function effectOf(now: ProtocolFile, next: ProtocolFile): OutputOf<'protocol.preview'> {
	const visits = demoVisits()
	try {
		const changes = visits.flatMap(({ name, visit, earlier }) => {
			const before = saysOf(assess(visit, earlier, now)),
				after = saysOf(assess(visit, earlier, next))
			const gone = [...before].filter((one) => !after.has(one)),
				added = [...after].filter((one) => !before.has(one))
			return gone.length + added.length === 0
				? []
				: [{ name, visitDate: visit.visitDate, gone, added }]
		})
		return { visits: visits.length, changes }
	} catch (error) {
		throw new Refusal(
			'The rules cannot work with these values: ' +
				`${error instanceof Error ? error.message : 'unknown'}. Nothing was changed.`,
		)
	}
}
