/** A session as a whole: filled, shared as it may be, and worn in the pair that was pinned. */
import {
	mayBeWorn,
	minutesIn,
	pairAt,
	type SeasonProblem,
	totalMinutes,
} from '../problem/problem.ts'
import type { Checked, PlannedSession } from './checked.ts'

/** What was settled before stands in the rotation. */
export function checkSettled(
	problem: SeasonProblem,
	{ at, uses, settled }: PlannedSession,
	found: Checked,
): void {
	for (const [pair, { id }] of problem.pairs.entries()) {
		const wanted = minutesIn(settled, pair)
		if (Math.abs(Math.min(wanted, minutesIn(uses, pair)) - wanted) > 1e-3)
			found.problems.push({ ...at, is: 'settled', pair: id })
	}
}
/** Every minute is worn in a pair, or the session counts as one without. */
function checkFilled(session: PlannedSession, found: Checked): void {
	const { index, slot, at, uses, chosen, freeMinutes } = session
	const total = totalMinutes(uses)
	if (freeMinutes > 1e-6 && chosen.length === 0) found.noPair.push(index)
	else if (Math.abs(total - slot.minutes) > 1e-2)
		found.problems.push({ ...at, is: 'minutes', planned: total, minutes: slot.minutes })
}
/**
 * At most two pairs, only in a session that may be shared, each long enough to change boots for.
 */
function checkShared(problem: SeasonProblem, session: PlannedSession, found: Checked): void {
	const { slot, at, chosen, freeMinutes } = session
	if (chosen.length > 1 && slot.split) found.changes += 1
	else if (chosen.length > 1) found.problems.push({ ...at, is: 'unshared' })
	for (const use of chosen)
		if (use.minutes < Math.min(problem.shortestPartMinutes, freeMinutes) - 1e-2)
			found.problems.push({
				...at,
				is: 'short-part',
				pair: pairAt(problem, use.pair).id,
				minutes: use.minutes,
				leastMinutes: problem.shortestPartMinutes,
			})
	if (chosen.length > 2) found.problems.push({ ...at, is: 'crowded' })
}
/** The pinned pair is worn for all that is free, where it may be worn at all. */
function checkPinned(problem: SeasonProblem, session: PlannedSession, found: Checked): void {
	const { index, slot, settled, chosen, freeMinutes } = session
	if (slot.pin === undefined || freeMinutes <= 1e-6) return
	const isSettled = minutesIn(settled, slot.pin) > 0
	if (
		mayBeWorn(problem, index, slot.pin) &&
		!isSettled &&
		minutesIn(chosen, slot.pin) < freeMinutes - 1e-2
	)
		found.pinMissed.push(index)
}
/** The pair that the plan before told is worn, where it may be. */
function checkTold(problem: SeasonProblem, session: PlannedSession, found: Checked): void {
	const { index, slot, settled, chosen, freeMinutes } = session
	if (slot.told === undefined || freeMinutes <= 1e-6) return
	const isOpen = mayBeWorn(problem, index, slot.told) && minutesIn(settled, slot.told) === 0
	if (isOpen && minutesIn(chosen, slot.told) === 0) found.toldMissed.push(index)
}
/** The rules of a session that is still to come. */
export function checkSession(
	problem: SeasonProblem,
	session: PlannedSession,
	found: Checked,
): void {
	if (problem.matchesHeld && session.slot.kind === 'match')
		found.problems.push({ ...session.at, is: 'held' })
	checkFilled(session, found)
	checkShared(problem, session, found)
	checkPinned(problem, session, found)
	checkTold(problem, session, found)
}
