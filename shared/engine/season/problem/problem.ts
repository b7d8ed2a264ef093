/** The rotation as numbers: what the model is built from and what the verifier checks against. */
import { need } from '../../plain/need.ts'
import type { Ground } from '../../protocol/norms/suitability.table.ts'
import type { Code, Sole, Surface } from '../../visit/terms.ts'
import type { Barred, WeeklyLimit } from '../../words/en/season/wearing.ts'

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
	/** place of the pair the clinician pinned */
	pin?: number
	/** place of the pair that the plan before told for it */
	told?: number
	/** What the session lasts for the others, where a long lay-off shortens it for this player. */
	fullMinutes?: number
	/** number of the week since the return, and the days off before it */
	easedWeek?: number
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
	/** share of the dearest price per minute of life, 0 to 1 */
	relativePrice: number
	/** Never worn: dangerous, or not before it is mended. */
	leftOff?: true
	/** Not in matches. */
	trainingOnly?: true
	/** Worn until this day at the latest, ISO date. */
	lastDay?: string
	/** Growth takes its room on this day, ISO date: then its last day. */
	outgrownOn?: string
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
interface CapWeek {
	monday: string
	slots: number[]
	minutes: number
}
/** A weekly limit of a group of pairs. */
export interface Cap {
	id: string
	limit: WeeklyLimit
	pairs: number[]
	weeks: CapWeek[]
}
/** What counts against what inside the last two levels, and what they are reckoned by. */
export interface Weights {
	change: number
	wear: number
	share: number
	switchOver: number
	switchHours: number
	price: number
	/** of a session without a pair at the season's beginning, fewer the later */
	gap: number
	familiarDays: number
}
export interface SeasonProblem {
	slots: Slot[]
	pairs: Owned[]
	/**
	 * By session, then pair: points an hour, or why it may not be worn there. Read by pointsAt and
	 * barredAt.
	 */
	cost: (number | Barred)[][]
	fixed: Fixed[]
	caps: Cap[]
	matchFromMinutes: number
	breakIn: {
		firstMinutes: number
		share: number
		/** steps are rounded down to it */
		roundMinutes: number
	}
	/** Matches ahead wait: none is played. */
	matchesHeld?: true
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

/** A session by its place in the season. */
export const slotAt = ({ slots }: SeasonProblem, slot: number): Slot =>
	need(slots[slot], 'the session')
/** A pair by its place among the pairs. */
export const pairAt = ({ pairs }: SeasonProblem, pair: number): Owned =>
	need(pairs[pair], 'the pair')
const costAt = ({ cost }: SeasonProblem, slot: number, pair: number): number | Barred =>
	need(cost[slot]?.[pair], 'the points of a pair in a session')
/** Points an hour of a pair in a session; undefined where it may not be worn there. */
export function pointsAt(problem: SeasonProblem, slot: number, pair: number): number | undefined {
	const cost = costAt(problem, slot, pair)
	return typeof cost === 'number' ? cost : undefined
}
/** Why a pair may not be worn in a session; undefined where it may. */
export function barredAt(problem: SeasonProblem, slot: number, pair: number): Barred | undefined {
	const cost = costAt(problem, slot, pair)
	return typeof cost === 'number' ? undefined : cost
}
/** Whether a pair may be worn in a session. */
export const mayBeWorn = (problem: SeasonProblem, slot: number, pair: number): boolean =>
	pointsAt(problem, slot, pair) !== undefined
/** What is worn in a session, in order of wear. */
export const usesIn = ({ uses }: Rotation, slot: number): Use[] =>
	need(uses[slot], 'the session of the rotation')

/** The weekly limits that hold for a pair in a session. */
export const limitsOn = (
	{ caps }: SeasonProblem,
	slot: number,
	pair: number,
): { cap: Cap; week: CapWeek }[] =>
	caps
		.filter((cap) => cap.pairs.includes(pair))
		.flatMap((cap) =>
			cap.weeks.filter((week) => week.slots.includes(slot)).map((week) => ({ cap, week })),
		)

/** All minutes of a list of uses. */
export const totalMinutes = (uses: readonly { minutes: number }[]): number =>
	uses.reduce((sum, use) => sum + use.minutes, 0)
/** Minutes in a pair of a list of uses. */
export const minutesIn = (uses: readonly Use[], pair: number): number =>
	totalMinutes(uses.filter((use) => use.pair === pair))
/** Minutes settled in a pair, of sessions whose minutes are not yet among the recorded ones. */
export const settledMinutes = (problem: SeasonProblem, pair: number): number =>
	totalMinutes(
		problem.fixed.filter((fixed) => fixed.pair === pair && slotAt(problem, fixed.slot).counts),
	)

/** '2027-01-12T18:00': when a session begins, as findings name it. */
export const momentOf = ({ date, start }: Slot): string => `${date}T${start}`
export const endHour = (slot: Slot): number => slot.startHour + slot.minutes / 60
/** True where a pair worn in one session has not dried when a later one begins. */
export const stillWet = (pair: Owned, worn: Slot, next: Slot): boolean =>
	next.startHour - endHour(worn) < pair.dryingHours[worn.ground] - 1e-9
/** A training not yet over: what shares of the pairs are taken of. */
export const isTrainingAhead = (slot: Slot): boolean => slot.kind === 'training' && !slot.past
/** Minutes of all trainings ahead. */
export const trainingAhead = ({ slots }: SeasonProblem): number =>
	totalMinutes(slots.filter(isTrainingAhead))
/** What is settled in each session before solving. */
export const fixedUses = ({ slots, fixed }: SeasonProblem): Use[][] =>
	slots.map((_, slot) =>
		fixed
			.filter((settled) => settled.slot === slot)
			.map(({ pair, minutes }) => ({ pair, minutes })),
	)
/** Minutes of a session still to be given to a pair: 0 for the past. */
export const openMinutes = (slot: Slot, settled: readonly Use[]): number =>
	slot.past ? 0 : Math.max(0, slot.minutes - totalMinutes(settled))
