/**
 * The break-in ladder of a new pair: how long it may be worn next, and in which trainings it is.
 */
import {
	type Fixed,
	limitsOn,
	mayBeWorn,
	type Owned,
	type SeasonProblem,
	type Slot,
	settledMinutes,
	slotAt,
	stillWet,
	totalMinutes,
} from './problem.ts'

type Rule = Pick<SeasonProblem['breakIn'], 'firstMinutes' | 'share'>
/** Longest wear in minutes after so many minutes in the pair. */
const ladderLimit = (soFarMinutes: number, { firstMinutes, share }: Rule): number =>
	firstMinutes + share * soFarMinutes

/** Cumulative minutes after each session when the ladder alone decides. */
export function ladderMinutes(sessionMinutes: readonly number[], rule: Rule): number[] {
	let total = 0
	return sessionMinutes.map((minutes) => {
		total += Math.min(minutes, ladderLimit(total, rule))
		return total
	})
}

/**
 * The next step in a session, in round minutes. Boots are not changed for the last few minutes: the
 * step is then shorter.
 * @returns 0 where the session has no room for a step and a change
 */
function ladderStep(
	soFarMinutes: number,
	sessionMinutes: number,
	{ breakIn, shortestPartMinutes }: Pick<SeasonProblem, 'breakIn' | 'shortestPartMinutes'>,
): number {
	const round = (minutes: number): number =>
		minutes < breakIn.roundMinutes
			? Math.floor(minutes)
			: Math.floor(minutes / breakIn.roundMinutes) * breakIn.roundMinutes
	const limit = ladderLimit(soFarMinutes, breakIn)
	if (limit >= sessionMinutes) return sessionMinutes
	return Math.max(0, round(Math.min(limit, sessionMinutes - shortestPartMinutes)))
}
/** A new pair on its ladder. */
interface Climb {
	place: number
	pair: Owned
	/** minutes in the pair so far */
	minutes: number
	/** place of the session it was worn in last */
	last: number | undefined
}
/** Minutes after which the pair may be worn in any session, however long. */
function enoughMinutes(problem: SeasonProblem, pair: number): number {
	const longest = problem.slots
		.filter((slot, place) => !slot.past && mayBeWorn(problem, place, pair))
		.reduce((most, slot) => Math.max(most, slot.minutes), 0)
	const { firstMinutes, share } = problem.breakIn
	return Math.max(problem.matchFromMinutes, (longest - firstMinutes) / share)
}
/** Whether a session may hold a step at all: a training ahead, of no other pair, the pair dry. */
function suitsStep(
	problem: SeasonProblem,
	{ place, pair, last }: Climb,
	slot: Slot,
	session: number,
): boolean {
	if (slot.past || slot.kind === 'match') return false
	if (slot.pin !== undefined && slot.pin !== place) return false
	if (!mayBeWorn(problem, session, place)) return false
	return last === undefined || (session > last && !stillWet(pair, slotAt(problem, last), slot))
}
/** Whether a step keeps the weekly limits, other steps of the week counted. */
const withinLimits = (problem: SeasonProblem, steps: readonly Fixed[], step: Fixed): boolean =>
	limitsOn(problem, step.slot, step.pair).every(({ cap, week }) => {
		const others = steps.filter(
			(other) => cap.pairs.includes(other.pair) && week.slots.includes(other.slot),
		)
		return step.minutes + totalMinutes(others) <= week.minutes
	})
/**
 * Lays the steps of one pair behind those laid before.
 * @returns the first session at which it may be worn like any other; undefined where the season is
 * too short
 */
function layLadder(problem: SeasonProblem, climb: Climb, steps: Fixed[]): number | undefined {
	const enough = enoughMinutes(problem, climb.place)
	if (climb.minutes >= enough) return 0
	for (const [session, slot] of problem.slots.entries()) {
		const taken = steps.some((step) => step.slot === session)
		if (taken || !suitsStep(problem, climb, slot, session)) continue
		const minutes = ladderStep(climb.minutes, slot.minutes, problem)
		const step: Fixed = { slot: session, pair: climb.place, minutes, why: 'break-in' }
		if (minutes <= 0 || !withinLimits(problem, steps, step)) continue
		steps.push(step)
		climb.last = session
		climb.minutes += minutes
		if (climb.minutes >= enough) return session + 1
	}
	return undefined
}
/**
 * The ladder of each new pair laid on the first trainings it suits, one new pair a session, never
 * on a pair still drying.
 * @returns the steps, and for each pair the first session at which it may be worn like any other
 * (0 where it is not new, undefined: not within the season)
 */
export function layLadders(problem: SeasonProblem): {
	steps: Fixed[]
	freeFrom: (number | undefined)[]
} {
	const steps: Fixed[] = []
	const freeFrom = problem.pairs.map((pair, place) => {
		if (!pair.isNew) return 0
		const worn = problem.fixed.filter((fixed) => fixed.pair === place).map(({ slot }) => slot)
		const climb: Climb = {
			place,
			pair,
			minutes: pair.startMinutes + settledMinutes(problem, place),
			last: worn.length > 0 ? Math.max(...worn) : undefined,
		}
		return layLadder(problem, climb, steps)
	})
	return { steps, freeFrom }
}
