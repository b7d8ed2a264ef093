/** The rotation as numbers: what the model is built from and what the verifier checks against. */
import type { Ground } from '../protocol/norms/suitability.table.ts'
import type { Code, Sole, Surface } from '../visit/terms.ts'

/**
 * One session of the season. Hours count from the epoch by the wall clock of the clinic (a change
 * to summer time is not counted).
 */
export interface Slot {
	id: string
	date: string
	start: string
	startHour: number
	minutes: number
	kind: 'training' | 'match'
	surface: Surface
	ground: Ground
	team?: string
	title?: string
	code?: Code
	/** index of the pair the clinician pinned */ pin?: number
	/** What the session lasts for the others, where a long lay-off shortens it for this player. */
	fullMinutes?: number
	/** number of the week since the return, and the days off before it */ easedWeek?: number
	easedDays?: number
	/** Already over: nothing is decided about it any more. */
	past: boolean
	/** Its minutes are not yet in the recorded minutes of the pairs. */
	counts: boolean
	/**
	 * May be shared between two pairs (only trainings of the first weeks, only where a weekly limit
	 * holds and nothing is pinned).
	 */
	split: boolean
}
export interface Owned {
	id: string
	name: string
	letter: string
	sole: Sole
	startMinutes: number
	lifeMinutes: number
	dryingHours: Record<Ground, number>
	isNew: boolean
	newFrom?: string
	/**
	 * share of the training time ahead, 0 to 1, that the pair should be worn at least and at most (a
	 * wish)
	 */
	shareMin?: number
	shareMax?: number
	/** share of the dearest price per minute of life, 0 to 1 */ relativePrice: number
}
/**
 * Minutes in a pair that are settled before solving: worn in the past, or a step of the break-in
 * ladder.
 */
export interface Fixed {
	slot: number
	pair: number
	minutes: number
	why: 'worn' | 'break-in'
}
export interface Cap {
	id: string
	says: string
	pairs: number[]
	weeks: { monday: string; slots: number[]; minutes: number }[]
}
export interface Weights {
	noPair: number
	pin: number
	notDry: number
	unfamiliar: number
	change: number
	shareBound: number
	wear: number
	share: number
	switchOver: number
	switchHours: number
	price: number
	familiarDays: number
}
export interface SeasonProblem {
	slots: Slot[]
	pairs: Owned[]
	/** Points an hour of each pair in each session, or why it may not be worn. */
	cost: (number | string)[][]
	fixed: Fixed[]
	caps: Cap[]
	matchFromMinutes: number
	breakIn: {
		firstMinutes: number
		share: number
		/** steps are rounded down to it */
		roundMinutes: number
	}
	/** A pair is worn so long at least when boots are changed inside a session. */
	shortestPartMinutes: number
	weights: Weights
}
export interface Use {
	pair: number
	minutes: number
}
/**
 * What the solver decided, or anyone else: the pairs worn in each session, none where none may be.
 */
export interface Rotation {
	uses: Use[][]
}

/**
 * Points of a session without a pair: a match weighs a little more than a training, an earlier
 * session a little more than a later one.
 */
export const noPairPoints = ({ slots, weights }: SeasonProblem, s: number): number =>
	weights.noPair +
	(slots[s]!.kind === 'match' ? 0.5 : 0) +
	(0.4 * (slots.length - s)) / slots.length
export const endHour = (slot: Slot): number => slot.startHour + slot.minutes / 60
/** True where pair p worn in session s has not dried when session k begins (s before k). */
export function stillWet(problem: SeasonProblem, pair: number, s: number, k: number): boolean {
	const [worn, next] = [problem.slots[s]!, problem.slots[k]!]
	return next.startHour - endHour(worn) < problem.pairs[pair]!.dryingHours[worn.ground] - 1e-9
}
/** Minutes of all trainings ahead: what shares of the pairs are taken of. */
export const trainingAhead = ({ slots }: SeasonProblem): number =>
	slots.reduce((sum, slot) => sum + (slot.kind === 'training' && !slot.past ? slot.minutes : 0), 0)
/** The settled minutes of a pair in a session. */
export function fixedUses(problem: SeasonProblem): Use[][] {
	const uses: Use[][] = problem.slots.map(() => [])
	for (const { slot, pair, minutes } of problem.fixed) uses[slot]!.push({ pair, minutes })
	return uses
}
/** Minutes of a session still to be given to a pair: 0 for the past. */
export function openMinutes(problem: SeasonProblem, slot: number, fixed: readonly Use[]): number {
	const { past, minutes } = problem.slots[slot]!
	return past ? 0 : Math.max(0, minutes - fixed.reduce((sum, one) => sum + one.minutes, 0))
}
