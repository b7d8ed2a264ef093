/** A pair worn in a session: allowed, dry, broken in, familiar, and not past its life. */
import {
	barredAt,
	endHour,
	minutesIn,
	type Owned,
	pairAt,
	pointsAt,
	type SeasonProblem,
	type Slot,
	type Use,
} from '../problem/problem.ts'
import type { Checked, PlannedSession } from './checked.ts'

/** A use with what it is checked against. */
interface WornPair {
	session: PlannedSession
	/** the sessions before it, in order of time */
	earlier: readonly PlannedSession[]
	use: Use
	pair: Owned
	isSettled: boolean
	/** minutes in the pair when the session begins */
	minutesBefore: number
}
/** A pair that is worn by choice may be worn there; its points count by the hour. */
function checkAllowed(problem: SeasonProblem, worn: WornPair, found: Checked): void {
	if (worn.isSettled) return
	const { session, use, pair } = worn
	const points = pointsAt(problem, session.index, use.pair)
	const barred = barredAt(problem, session.index, use.pair)
	if (points !== undefined) found.suitability += (points * use.minutes) / 60
	const limited = barred ?? limitOn(pair, session.slot)
	if (limited) found.problems.push({ ...session.at, is: 'barred', pair: pair.id, barred: limited })
}
/** A pair that is left off, for training only, or past its last day. */
function limitOn({ leftOff, trainingOnly, lastDay }: Owned, { kind, date }: Slot) {
	if (leftOff) return { why: 'left-off' } as const
	if (trainingOnly && kind === 'match') return { why: 'training-only' } as const
	return lastDay !== undefined && date > lastDay
		? ({ why: 'replaced', by: lastDay } as const)
		: undefined
}
/** Any earlier wear that ended too short a time before: soaked is a broken rule, damp a wish. */
function checkDry({ session, earlier, use, pair, isSettled }: WornPair, found: Checked): void {
	const moist = earlier.filter(
		({ slot, uses }) =>
			minutesIn(uses, use.pair) > 0 &&
			session.slot.startHour - endHour(slot) < pair.dryingHours[slot.ground] - 1e-9,
	)
	if (moist.some(({ slot }) => slot.ground === 'wet'))
		found.problems.push({ ...session.at, is: 'soaked', pair: pair.id })
	else if (moist.length > 0 && !isSettled)
		found.notDry.push({ slot: session.index, pair: use.pair })
}
/** A new pair keeps to its ladder, and enters no match before it has been worn enough. */
function checkBrokenIn(
	problem: SeasonProblem,
	{ session, use, pair, minutesBefore }: WornPair,
	found: Checked,
): void {
	if (!pair.isNew) return
	const { breakIn, matchFromMinutes } = problem
	const most = breakIn.firstMinutes + breakIn.share * minutesBefore
	if (use.minutes > most + 1e-6)
		found.problems.push({
			...session.at,
			is: 'break-in',
			pair: pair.id,
			minutes: use.minutes,
			mostMinutes: most,
		})
	if (session.slot.kind === 'match' && minutesBefore < matchFromMinutes - 1e-6)
		found.problems.push({
			...session.at,
			is: 'match-too-early',
			pair: pair.id,
			minutes: minutesBefore,
			fromMinutes: matchFromMinutes,
		})
}
/** A match is played in a pair of the trainings shortly before, where the season reaches so far. */
function checkFamiliar(
	{ slots, weights }: SeasonProblem,
	{ session, earlier, use, isSettled }: WornPair,
	found: Checked,
): void {
	const { index, slot } = session
	if (slot.kind !== 'match' || isSettled) return
	const since = slot.startHour - 24 * weights.familiarDays
	const trained = earlier.some(
		(training) =>
			training.slot.kind === 'training' &&
			training.slot.startHour >= since &&
			minutesIn(training.uses, use.pair) > 0,
	)
	const beginning = slots[0]?.startHour ?? since
	if (since >= beginning && !trained) found.unfamiliar.push({ slot: index, pair: use.pair })
}
/** The rules of a pair in a session, its life aside. */
export function checkUse(problem: SeasonProblem, worn: WornPair, found: Checked): void {
	checkAllowed(problem, worn, found)
	checkDry(worn, found)
	checkBrokenIn(problem, worn, found)
	checkFamiliar(problem, worn, found)
}
/** No pair is worn past its life by choice. */
export function checkLife(
	{ session, pair, isSettled }: WornPair,
	minutesAfter: number,
	found: Checked,
): void {
	if (minutesAfter > pair.lifeMinutes + 1e-2 && !isSettled)
		found.problems.push({
			...session.at,
			is: 'life',
			pair: pair.id,
			lifeMinutes: pair.lifeMinutes,
		})
}
/** A use made ready for its checks. */
export const wornPair = (
	problem: SeasonProblem,
	session: PlannedSession,
	earlier: readonly PlannedSession[],
	use: Use,
	minutesBefore: number,
): WornPair => ({
	session,
	earlier,
	use,
	pair: pairAt(problem, use.pair),
	isSettled: minutesIn(session.settled, use.pair) > 0,
	minutesBefore,
})
