/** What is proposed about size, raise and insert, as one text each, by the figures they need alone. */
import { ankleSides } from '../ankle/ankle.ts'
import { factsOf } from '../facts/facts-of.ts'
import type {
	Assessment,
	Gate,
	InsertSide,
	PerSide,
	PlayerFacts,
	PostureResult,
} from '../findings/assessment.ts'
import { posture, postureSides } from '../posture/posture.ts'
import { heelFigures } from '../prescription/heels.ts'
import { pairsLeftOff } from '../prescription/owned.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type Raised, raiseFigures } from '../raise/raise.ts'
import { type SizeAlone, sizeAlone } from '../sizing/sizing.ts'
import { bothSides } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

export const tried = ['size', 'raise', 'insert'] as const
export type Tried = (typeof tried)[number]
export type Outcomes = Partial<Record<Tried, string>>
/** What does not vary: gate, facts, posture and pairs left off are as they were. */
export interface Fixed {
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
	const recorded = postureSides(visit, protocol)
	const facts = factsOf(visit, { posture: recorded, screening }, protocol)
	return {
		gate,
		facts,
		posture: posture(visit, before, protocol, { facts, gate }),
		pairsLeftOff: new Set(pairsLeftOff(owned)),
		protocol,
	}
}
/** Whole millimetres: a raise is not made finer. */
const raiseText = ({ aim, pairs }: Raised): string =>
	[
		aim.kind,
		...pairs.map((pair) =>
			[pair.pair, ...bothSides.map((side) => Math.round(pair[side].addMm))].join(' '),
		),
	].join('; ')
const insertText = (inserts: PerSide<InsertSide>): string =>
	bothSides
		.map((side) =>
			[inserts[side].state, ...inserts[side].elements.map(({ element }) => element)].join(' '),
		)
		.join('; ')
/** The label of the size, which turns where the length inside slides. */
const sizeText = ({ uk }: SizeAlone): Outcomes => (uk ? { size: `${uk.scale} ${uk.label}` } : {})
/**
 * Figures alone: nothing is said, ranked or composed.
 * @param wanted which of them are asked for: nothing is worked out for the others
 */
export function outcomesOf(visit: Visit, wanted: readonly Tried[], fixed: Fixed): Outcomes {
	const { protocol, facts, gate } = fixed
	const sized = sizeAlone(visit, protocol)
	const size = sizeText(sized)
	if (!wanted.includes('raise') && !wanted.includes('insert')) return size
	const ankle = ankleSides(visit, protocol, { facts, gate })
	const context = { ...fixed, ankle, sizing: sized }
	if (!wanted.includes('insert'))
		return { ...size, raise: raiseText(raiseFigures(visit, context, protocol)) }
	const { raised, inserts } = heelFigures(visit, context, protocol)
	return { ...size, raise: raiseText(raised), insert: insertText(inserts) }
}
