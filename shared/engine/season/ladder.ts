/**
 * The break-in ladder of a new pair: how long it may be worn next, and in which trainings it is.
 */
import type { Fixed, SeasonProblem } from './problem.ts'
import { stillWet } from './problem.ts'

/** Longest wear in minutes after so many minutes in the pair. */
type Rule = Pick<SeasonProblem['breakIn'], 'firstMinutes' | 'share'>
export const ladderLimit = (soFarMinutes: number, { firstMinutes, share }: Rule): number =>
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
export function ladderStep(
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
/**
 * The ladder of each new pair laid on the first trainings it suits, one new pair a session, never
 * on a pair still drying.
 * @returns the steps, and for each new pair the first session at which it may be worn like any
 * other (undefined: not within the season)
 */
export function layLadders(problem: SeasonProblem): {
	steps: Fixed[]
	freeFrom: (number | undefined)[]
} {
	const steps: Fixed[] = []
	const taken = new Set<number>()
	const freeFrom = problem.pairs.map((pair, p) => {
		if (!pair.isNew) return 0
		const longest = Math.max(
			0,
			...problem.slots
				.filter((slot, s) => !slot.past && typeof problem.cost[s]![p] === 'number')
				.map((slot) => slot.minutes),
		)
		const enough = Math.max(
			problem.matchFromMinutes,
			(longest - problem.breakIn.firstMinutes) / problem.breakIn.share,
		)
		let total =
			pair.startMinutes +
			problem.fixed
				.filter((fixed) => fixed.pair === p && problem.slots[fixed.slot]!.counts)
				.reduce((sum, one) => sum + one.minutes, 0)
		let last = problem.fixed
			.filter((fixed) => fixed.pair === p)
			.reduce((latest, one) => Math.max(latest, one.slot), -1)
		if (total >= enough) return 0
		for (const [s, slot] of problem.slots.entries()) {
			if (
				slot.past ||
				slot.kind === 'match' ||
				taken.has(s) ||
				typeof problem.cost[s]![p] !== 'number' ||
				(slot.pin !== undefined && slot.pin !== p)
			)
				continue
			if (last >= 0 && (s <= last || stillWet(problem, p, last, s))) continue
			const minutes = ladderStep(total, slot.minutes, problem)
			if (minutes <= 0) continue
			const capped = problem.caps.some(
				(cap) =>
					cap.pairs.includes(p) &&
					cap.weeks.some(
						(week) =>
							week.slots.includes(s) &&
							steps
								.filter((step) => cap.pairs.includes(step.pair) && week.slots.includes(step.slot))
								.reduce((sum, one) => sum + one.minutes, minutes) > week.minutes,
					),
			)
			if (capped) continue
			steps.push({ slot: s, pair: p, minutes, why: 'break-in' })
			taken.add(s)
			last = s
			total += minutes
			if (total >= enough) return s + 1
		}
		return undefined
	})
	return { steps, freeFrom }
}
