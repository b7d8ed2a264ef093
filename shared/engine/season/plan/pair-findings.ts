/** Findings of each pair of a planned season: worn out, outgrown, broken in. */
import { type Finding, findingOf } from '../../findings/finding.ts'
import { present } from '../../plain/present.ts'
import type { Because } from '../../protocol/basis.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { NamedPair } from '../../words/en/season/wearing.ts'
import { state } from '../../words/statement.ts'
import type { PlanPair } from '../plan-file.ts'
import {
	type Fixed,
	mayBeWorn,
	type Owned,
	type SeasonProblem,
	slotAt,
} from '../problem/problem.ts'

const called = ({ letter, name }: NamedPair): NamedPair => ({ letter, name })
const minutesAtEnd = (pair: PlanPair): Because => ({
	measure: 'minutesAtEnd',
	value: rounded(pair.minutes, 0),
	unit: 'min',
})
/** The end of its life, else the day to look at studs, counter and sole. */
function wearFindings(pair: PlanPair, protocol: Protocol): Finding[] {
	const { id, wornOutBy, checkBy } = pair
	if (wornOutBy !== undefined)
		return [
			findingOf(state('season.worn-out', { ...called(pair), by: wornOutBy }), {
				id: `season.worn-out-${id}`,
				side: 'none',
				level: 'advise',
				because: [minutesAtEnd(pair)],
				basis: protocol.basis('wear to the end of life', 'season.lifeMinutes'),
			}),
		]
	if (checkBy === undefined) return []
	return [
		findingOf(state('season.wear-check', { ...called(pair), by: checkBy }), {
			id: `season.wear-check-${id}`,
			side: 'none',
			level: 'note',
			because: [minutesAtEnd(pair)],
			basis: protocol.basis('wear to the window of replacement', 'season.checkShare'),
		}),
	]
}
/** What the forecast says of a day. */
const roomOn = ({ toeRoom = [] }: PlanPair, day: string): Because[] =>
	toeRoom
		.filter(({ date }) => date === day)
		.map(({ toeRoomMm }) => ({
			measure: 'toeRoomForecastMm',
			at: day,
			value: toeRoomMm,
			unit: 'mm',
		}))
function outgrownFindings(pair: PlanPair, protocol: Protocol): Finding[] {
	const { id, outgrownBy: by, measureAgainBy } = pair
	if (by === undefined) return []
	return [
		findingOf(state('season.outgrown', { ...called(pair), by, measureBy: measureAgainBy ?? by }), {
			id: `season.outgrown-${id}`,
			side: 'none',
			level: 'advise',
			because: roomOn(pair, by),
			basis: protocol.basis(
				'toe room against the forecast of foot growth',
				'footwear.youthReplaceMm',
			),
		}),
	]
}
/** What a pair's forecast asks for. */
export const pairFindings = (pair: PlanPair, protocol: Protocol): Finding[] => [
	...wearFindings(pair, protocol),
	...outgrownFindings(pair, protocol),
]

/** Each step of a ladder, by its day. */
const stepDays = (problem: SeasonProblem, steps: readonly Fixed[]): Because[] =>
	steps.map((step) => ({
		measure: 'breakInMinutes',
		at: slotAt(problem, step.slot).date,
		value: rounded(step.minutes, 0),
		unit: 'min',
	}))
function howToBreakIn(
	problem: SeasonProblem,
	pair: Owned,
	steps: readonly Fixed[],
	last: Fixed,
	protocol: Protocol,
) {
	const { firstMinutes } = problem.breakIn
	const usual = protocol.value('season.breakInFirstMinutes')
	return state('season.break-in', {
		...called(pair),
		firstMinutes: rounded(firstMinutes, 0),
		trainings: steps.length,
		until: slotAt(problem, last.slot).date,
		...present({
			insertPercent: firstMinutes < usual ? rounded((100 * firstMinutes) / usual, 0) : undefined,
		}),
	})
}
/** How each new pair is broken in, or that the season is too short for it. */
export function breakInFindings(problem: SeasonProblem, protocol: Protocol): Finding[] {
	return problem.pairs.flatMap((pair, place) => {
		if (!pair.isNew) return []
		const steps = problem.fixed.filter((fixed) => fixed.pair === place && fixed.why === 'break-in')
		const isFree = problem.slots.some(
			(slot, session) =>
				!slot.past &&
				mayBeWorn(problem, session, place) &&
				!steps.some((step) => step.slot === session),
		)
		const last = steps.at(-1)
		if (isFree && !last) return []
		const said =
			isFree && last
				? howToBreakIn(problem, pair, steps, last, protocol)
				: state('season.break-in-late', called(pair))
		return [
			findingOf(said, {
				id: `season.break-in-${pair.id}`,
				side: 'none',
				level: isFree ? 'note' : 'caution',
				because: stepDays(problem, steps),
				basis: protocol.basis('break-in ladder', 'season.breakInFirstMinutes'),
			}),
		]
	})
}
