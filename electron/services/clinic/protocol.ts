/**
 * The clinic's protocol: one record per version, and what a change of it would do to the demo
 * visits.
 */

import { readFileSync } from 'node:fs'
import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { assess } from '../../../shared/engine/assess.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import { protocolProblems } from '../../../shared/engine/protocol/check.ts'
import {
	openProtocol,
	type Protocol,
	type ProtocolFile,
} from '../../../shared/engine/protocol/protocol.ts'
import { type Visit, visitSchema } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { placeOf } from '../../place.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { ClinicMemory } from './memory.ts'

export const getProtocol = ({ clinic }: Pick<Memory, 'clinic'>): OutputOf<'protocol.get'> =>
	present({ file: clinic.protocol, savedAs: clinic.recordIds.protocol })
/** Newest first. */
export const protocolVersions = ({
	clinic,
}: Pick<Memory, 'clinic'>): OutputOf<'protocol.versions'> => ({
	versions: clinic.protocolVersions.toReversed(),
})

/** Values of a version, and how those that were counted in this clinic were. */
type Values = Pick<InputOf<'protocol.save'>, 'values' | 'fpiScheme'> & Pick<ProtocolFile, 'counted'>
/** A value that was counted stays so until another is typed. */
const countedStill = (
	{ counted = {}, values: before = {} }: ProtocolFile,
	values: Values['values'],
): NonNullable<ProtocolFile['counted']> =>
	Object.fromEntries(Object.entries(counted).filter(([key]) => before[key] === values[key]))

function fileOf(
	clinic: ClinicMemory,
	{ values, fpiScheme, counted = countedStill(clinic.protocol, values) }: Values,
): ProtocolFile {
	const problems = protocolProblems(values)
	if (problems.length > 0)
		throw new Refusal(
			'clinic.protocol-value',
			'A value of the protocol cannot be used. Nothing was changed.',
			problems,
		)
	const shipped = openProtocol()
	// a value set back to the shipped one is not the clinic's any more
	const own = Object.fromEntries(
		Object.entries(values).filter(
			([key, value]) => shipped.value(key as Parameters<Protocol['value']>[0]) !== value,
		),
	)
	// a value set back to the shipped one was counted by nobody
	const ownCounted = Object.fromEntries(Object.entries(counted).filter(([key]) => key in own))
	return present({
		format: 'lastwright-protocol' as const,
		version: 1 as const,
		id: 'clinic',
		revision: (clinic.protocolVersions.at(-1)?.file.revision ?? 0) + 1,
		fpiScheme,
		values: Object.keys(own).length > 0 ? own : undefined,
		counted: Object.keys(ownCounted).length > 0 ? ownCounted : undefined,
	})
}
/**
 * Keeps a new version; signed visits keep the one they were signed under. @throws Refusal where
 * another version was saved meanwhile, or a value cannot be used
 */
export function saveProtocol(
	{ clinic, people }: Pick<Memory, 'clinic' | 'people'>,
	deps: Deps,
	input: InputOf<'protocol.save'> & Pick<ProtocolFile, 'counted'>,
): OutputOf<'protocol.save'> {
	if (input.follows !== clinic.recordIds.protocol)
		throw new Refusal(
			'clinic.protocol-changed-elsewhere',
			'The protocol was changed elsewhere since you opened it. Nothing was overwritten: open it ' +
				'again and repeat the change.',
		)
	const file = fileOf(clinic, input)
	// the rules must be able to work with it before it counts
	effectOf(clinic.protocol, file)
	const at = deps.now().toISOString()
	const value: ValueOf<'protocol'> = { file, why: input.why.trim(), by: people.acts().name, at }
	const savedAs = deps.keep({ kind: 'protocol', at, follows: input.follows, value })
	return { file, savedAs }
}
/** What the findings of the demo visits would say with these values; nothing is saved. */
export function previewProtocol(
	{ clinic }: Pick<Memory, 'clinic'>,
	input: InputOf<'protocol.preview'>,
): OutputOf<'protocol.preview'> {
	return effectOf(clinic.protocol, fileOf(clinic, input))
}

/**
 * The protocol a signed visit was made under, by its digest; undefined where no version of it is
 * kept here.
 */
export function protocolOfDigest(
	clinic: Pick<ClinicMemory, 'protocolVersions'>,
	digest: string,
): Protocol | undefined {
	return clinic.protocolVersions
		.map(({ file }) => openProtocol(file))
		.find((version) => version.identity().digest === digest)
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
		.parse(JSON.parse(readFileSync(placeOf('assets/demo/demo.json'), 'utf8')))
		.players.flatMap(({ player, visits }) =>
			visits.map((visit) => ({
				name: fullName(player),
				visit,
				earlier: visits.filter((other) => other.visitDate < visit.visitDate),
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
			const before = saysOf(assess(visit, earlier, now))
			const after = saysOf(assess(visit, earlier, next))
			const gone = [...before].filter((sentence) => !after.has(sentence))
			const added = [...after].filter((sentence) => !before.has(sentence))
			return gone.length + added.length === 0
				? []
				: [{ name, visitDate: visit.visitDate, gone, added }]
		})
		return { visits: visits.length, changes }
	} catch {
		throw new Refusal(
			'clinic.protocol-values-together',
			'The rules cannot work with these values together. Nothing was changed: set one value at a ' +
				'time and look at what it changes.',
		)
	}
}
