/**
 * How a raise is worn in, when it is looked at again, and how it is given up: everyday shoes first,
 * then training, never first in a match (common practice). Days from the day of fitting on.
 */
import type { PerSide, RaiseStep, RaiseStepWhen } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide, rounded } from '../visit/sides.ts'
import { type Statement, state } from '../words/statement.ts'
import type { Aimed } from './aim.ts'
import type { InPair } from './in-pair.ts'

const daysPerWeek = 7
const step = (
	days: number,
	when: RaiseStepWhen,
	addMm: PerSide<number>,
	statement: Statement,
): RaiseStep => ({ ...statement, from: `P${days}D`, when, addMm })
const none: PerSide<number> = { left: 0, right: 0 }

/** What stays on top for the leg length, with a height for both heels. */
const withCorrection = (baseMm: number, { correctionMm, shorter }: Aimed): PerSide<number> =>
	perSide((side) => rounded(baseMm + (side === shorter ? correctionMm : 0), 1))
/** Down by a step at a time until nothing is left for both heels; the correction stays. */
function weaning(baseMm: number, aimed: Aimed, protocol: Protocol): RaiseStep[] {
	const freeWeeks = protocol.value('footwear.raiseFreeMinWeeks')
	const stepMm = protocol.value('footwear.raiseStepMinMm')
	const everyWeeks = protocol.value('footwear.raiseStepWeeks')
	const when = aimed.aim.kind === 'range' ? 'range-regained' : 'free-of-pain'
	const startDays = protocol.value('raise.trainingAfterDays') + freeWeeks * daysPerWeek
	return Array.from({ length: Math.ceil(baseMm / stepMm) }, (_, index) => {
		const mm = withCorrection(Math.max(0, baseMm - (index + 1) * stepMm), aimed)
		const first = index === 0
		const weeks = first ? freeWeeks : everyWeeks
		return step(
			startDays + index * everyWeeks * daysPerWeek,
			when,
			mm,
			state('raise.step-wean', { mm, weeks, when, first }),
		)
	})
}
/** The most that any of some pairs is given under each heel, mm. */
const mostIn = (pairs: readonly InPair[]): PerSide<number> =>
	perSide((side) => Math.max(0, ...pairs.map(({ entry }) => entry[side].addMm)))
/**
 * The most in the shoes that a step is walked in: roomy ones, or boots. Where none of the kind is
 * known, what the others are given.
 */
function mostInKind(given: readonly InPair[], roomy: boolean): PerSide<number> {
	const ofKind = given.filter(({ pair }) => pair.roomy === roomy)
	return mostIn(ofKind.length > 0 ? ofKind : given)
}
/** A step is walked only with something to walk on. */
const stepIn = (mm: PerSide<number>, made: (mm: PerSide<number>) => RaiseStep): RaiseStep[] =>
	mm.left + mm.right > 0 ? [made(mm)] : []
/** The steps of a visit; none where nothing is given in any pair, no training where none in boots. */
export function raiseSteps(
	given: readonly InPair[],
	aimed: Aimed,
	protocol: Protocol,
): RaiseStep[] {
	const worn = given.filter(({ entry }) => entry.left.addMm + entry.right.addMm > 0)
	if (worn.length === 0) return []
	const baseMm = Math.max(...worn.map((pair) => pair.baseMm))
	const inRoomy = mostInKind(given, true)
	const inBoots = mostInKind(given, false)
	const days = protocol.value('raise.trainingAfterDays')
	const wholeSessions = protocol.value('insert.wearWholeSessions')
	const weeks = protocol.value('raise.reviewWeeks')
	return [
		...stepIn(inRoomy, (mm) => step(0, 'everyday', mm, state('raise.step-everyday', { mm, days }))),
		...stepIn(inBoots, (mm) => step(days, 'training', mm, state('raise.step-training', { mm }))),
		...stepIn(inBoots, (mm) =>
			step(
				protocol.value('raise.matchAfterDays'),
				'match',
				mm,
				state('raise.step-match', { mm, wholeSessions }),
			),
		),
		step(0, 'stop', none, state('raise.step-stop')),
		step(weeks * daysPerWeek, 're-check', mostIn(given), state('raise.step-re-check', { weeks })),
		...(baseMm > 0 ? weaning(baseMm, aimed, protocol) : []),
	]
}
