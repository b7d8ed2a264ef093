/** What is proposed about size, raise and insert, as one text each, by the rooms they need alone. */
import { ankle } from '../ankle/ankle.ts'
import { factsOf } from '../facts/facts-of.ts'
import type {
	Assessment,
	Gate,
	InsertResult,
	PlayerFacts,
	PostureResult,
	RaiseResult,
	SizingResult,
} from '../findings/assessment.ts'
import { posture } from '../posture/posture.ts'
import { heelsOf } from '../prescription/heels.ts'
import { pairsLeftOff } from '../prescription/owned.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { raise } from '../raise/raise.ts'
import { sizing } from '../sizing/sizing.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

export const tried = ['size', 'raise', 'insert'] as const
export type Tried = (typeof tried)[number]
export type Outcomes = Partial<Record<Tried, string>>
/** What does not vary: gate, facts, posture and pairs left off are as they were. */
export interface Fixed {
	before: readonly Visit[]
	gate: Gate
	facts: PlayerFacts
	posture: PostureResult
	pairsLeftOff: ReadonlySet<string>
	protocol: Protocol
}
/** Worked out once for all trials. */
export function fixedOf(
	visit: Visit,
	before: readonly Visit[],
	{ screening, prescription }: Pick<Assessment, 'screening' | 'prescription'>,
	protocol: Protocol,
): Fixed {
	const { gate, owned } = prescription
	const read = posture(visit, before, protocol)
	const facts = factsOf(visit, { posture: read, screening }, protocol)
	return {
		before,
		gate,
		facts,
		posture: posture(visit, before, protocol, { facts, gate }),
		pairsLeftOff: new Set(pairsLeftOff(owned)),
		protocol,
	}
}
/** Whole millimetres: a raise is not made finer. */
const raiseText = ({ aim, pairs }: RaiseResult): string =>
	[
		aim.kind,
		...pairs.map((pair) =>
			[pair.pair, ...bothSides.map((side) => Math.round(pair[side].addMm))].join(' '),
		),
	].join('; ')
const insertText = (inserts: InsertResult): string =>
	bothSides
		.map((side) =>
			[inserts[side].state, ...inserts[side].elements.map(({ element }) => element)].join(' '),
		)
		.join('; ')
/** The label of the size, which turns where the length inside slides. */
const sizeText = ({ sizes }: SizingResult): Outcomes =>
	sizes ? { size: `${sizes.uk.scale} ${sizes.uk.label}` } : {}
/** @param wanted which of them are asked for: no room is run for the others */
export function outcomesOf(visit: Visit, wanted: readonly Tried[], fixed: Fixed): Outcomes {
	const { before, protocol, facts, gate } = fixed
	const sized = sizing(visit, before, protocol)
	const size = sizeText(sized)
	if (!wanted.includes('raise') && !wanted.includes('insert')) return size
	const moved = ankle(visit, before, protocol, { facts, gate })
	const context = { ...fixed, ankle: moved, sizing: sized }
	if (!wanted.includes('insert'))
		return { ...size, raise: raiseText(raise(visit, context, protocol)) }
	const { raised, inserts } = heelsOf(visit, context, protocol)
	return { ...size, raise: raiseText(raised), insert: insertText(inserts) }
}
