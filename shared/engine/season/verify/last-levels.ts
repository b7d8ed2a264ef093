/** What is reached on the last two levels, reckoned from the rotation alone. */
import { mayBeWorn, minutesIn, type SeasonProblem, totalMinutes } from '../problem/problem.ts'
import type { PlannedSession } from './checked.ts'

/** Whether anyone could choose a pair in a session. */
const isOpenTo = (problem: SeasonProblem, session: PlannedSession, pair: number): boolean =>
	!session.slot.past &&
	session.freeMinutes > 0 &&
	mayBeWorn(problem, session.index, pair) &&
	minutesIn(session.settled, pair) === 0
/** Minutes of a session that someone may still give to a pair. */
const openMinutes = ({ slot, freeMinutes }: PlannedSession): number =>
	slot.past ? 0 : Math.max(0, freeMinutes)
const greatest = (values: readonly number[]): number => Math.max(0, ...values)

/**
 * Points of the most worn pair, of the one with the most minutes, of what the minutes cost, and of
 * sessions without a pair, the more the earlier.
 */
export function evenReached(
	problem: SeasonProblem,
	sessions: readonly PlannedSession[],
	noPair: readonly number[],
): number {
	const { pairs, weights } = problem
	const allMinutes = sessions.reduce((sum, session) => sum + openMinutes(session), 0)
	const counted = pairs.flatMap((pair, place) => {
		if (!sessions.some((session) => isOpenTo(problem, session, place))) return []
		const chosen = sessions.reduce(
			(sum, session) => sum + (session.slot.past ? 0 : minutesIn(session.chosen, place)),
			0,
		)
		const settled = sessions.reduce(
			(sum, { slot, settled: before }) => sum + (slot.counts ? minutesIn(before, place) : 0),
			0,
		)
		const start = pair.startMinutes + settled
		const trace = 0.0001 * (place + 1)
		return [
			{
				wear: Math.min(1, start / pair.lifeMinutes) + chosen / pair.lifeMinutes,
				share: chosen / allMinutes,
				cost: ((weights.price * pair.relativePrice + trace) * chosen) / 60,
			},
		]
	})
	const gaps = noPair.reduce((sum, place) => sum + 1 - place / sessions.length, 0)
	return (
		weights.wear * greatest(counted.map(({ wear }) => wear)) +
		weights.share * greatest(counted.map(({ share }) => share)) +
		counted.reduce((sum, { cost }) => sum + cost, 0) +
		weights.gap * gaps
	)
}
/** Whether a pair worn in a session is not worn in the one after, where both could wear it. */
function isSwitch(problem: SeasonProblem, before: PlannedSession, after: PlannedSession): boolean {
	const both = [...problem.pairs.keys()].filter(
		(pair) => isOpenTo(problem, before, pair) && isOpenTo(problem, after, pair),
	)
	return (
		both.length > 1 &&
		both.some((pair) => minutesIn(before.chosen, pair) > 0 && minutesIn(after.chosen, pair) === 0)
	)
}
/** Points of other pairs in sessions close together, and of changes of boots inside one. */
export function changesReached(
	problem: SeasonProblem,
	sessions: readonly PlannedSession[],
): number {
	const { weights } = problem
	const switches = sessions.filter((session, place) => {
		const before = sessions[place - 1]
		return (
			before !== undefined &&
			session.slot.startHour - before.slot.startHour < weights.switchHours &&
			isSwitch(problem, before, session)
		)
	})
	const inside = sessions.filter(
		({ slot, chosen }) => !slot.past && slot.split && chosen.length > 1 && totalMinutes(chosen) > 0,
	)
	return weights.switchOver * switches.length + weights.change * inside.length
}
