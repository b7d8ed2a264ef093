/**
 * How a raise is worn in, when it is looked at again, and how it is given up: everyday shoes first,
 * then training, never first in a match (common practice). Days from the day of fitting on.
 */

import type { PerSide, RaiseStep, RaiseStepWhen } from '../findings/assessment.ts'
import { daysPerWeek } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide, rounded } from '../visit/sides.ts'
import type { PairRole } from '../visit/terms.ts'
import { type Statement, state } from '../words/statement.ts'
import type { Aimed } from './aim.ts'
import type { InPair } from './in-pair.ts'

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
	const ownMm = protocol.value('footwear.raiseStepMinMm')
	// a step of nothing would never end: then it is given up at once
	const stepMm = ownMm > 0 ? ownMm : baseMm
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
const isRaised = ({ entry }: InPair): boolean => entry.left.addMm + entry.right.addMm > 0
const daily: readonly PairRole[] = ['everyday', 'running']
/**
 * What is worn in pairs for one of these: the most of them; undefined where none of them is raised.
 */
function mostIn(
	roles: readonly PairRole[],
	given: readonly InPair[],
	aimed: Aimed,
): PerSide<number> | undefined {
	const raised = given.filter(
		(one) => isRaised(one) && one.pair.wornFor.some((role) => roles.includes(role)),
	)
	if (raised.length === 0) return undefined
	return withCorrection(Math.max(...raised.map(({ baseMm }) => baseMm)), aimed)
}
/** Every day first, then training, then a match: each with the height of its own pairs. */
function wearingIn(given: readonly InPair[], aimed: Aimed, protocol: Protocol): RaiseStep[] {
	const [training, match] = [mostIn(['training'], given, aimed), mostIn(['match'], given, aimed)]
	const isKnown = given.some(({ pair }) => pair.wornFor.some((role) => daily.includes(role)))
	// shoes of every day that nobody recorded are worn with what the boots get
	const everyday = isKnown ? mostIn(daily, given, aimed) : (training ?? match)
	const days = protocol.value('raise.trainingAfterDays')
	const wholeSessions = protocol.value('insert.wearWholeSessions')
	const first = everyday === undefined
	return [
		everyday && step(0, 'everyday', everyday, state('raise.step-everyday', { days })),
		training &&
			step(first ? 0 : days, 'training', training, state('raise.step-training', { first })),
		match &&
			step(
				protocol.value('raise.matchAfterDays'),
				'match',
				match,
				state('raise.step-match', { wholeSessions }),
			),
	].filter((one) => one !== undefined)
}
/** The steps of a visit; none where nothing is given in any pair. */
export function raiseSteps(
	given: readonly InPair[],
	aimed: Aimed,
	protocol: Protocol,
): RaiseStep[] {
	const worn = given.filter(isRaised)
	if (worn.length === 0) return []
	const baseMm = Math.max(...worn.map((pair) => pair.baseMm))
	const mm = withCorrection(baseMm, aimed)
	const weeks = protocol.value('raise.reviewWeeks')
	return [
		...wearingIn(given, aimed, protocol),
		step(0, 'stop', none, state('raise.step-stop')),
		step(weeks * daysPerWeek, 're-check', mm, state('raise.step-re-check', { weeks })),
		...(baseMm > 0 ? weaning(baseMm, aimed, protocol) : []),
	]
}
