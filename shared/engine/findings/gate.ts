/**
 * The gate: what danger holds back, for the player as a whole or for a limb. What is held is
 * proposed nowhere: no screen, page, plan or shelf.
 */
import type { Action } from './screening-result.ts'

/** What may be held: of the whole player. */
export const heldOfPlayer = [
	'sport',
	'match',
	'impact',
	'purchase',
	'shelf',
	'season',
	'raise',
] as const
/** What may be held on one limb. `test` is lunge, heel rises, hop and Jack test. */
export const heldOfLimb = ['weight', 'test', 'exercise', 'insert'] as const
export const holdables = [...heldOfPlayer, ...heldOfLimb] as const
export type Holdable = (typeof holdables)[number]

/** One thing held by one rule of the protocol. It ends by a recorded outcome, never by an act. */
export interface Hold {
	what: Holdable
	/** The rule of `protocol/holds.table.ts` that holds it: outcomes name it. */
	rule: string
	/** The limb that the sign is on; absent where it has no side. */
	side?: 'left' | 'right'
	/** What ends it: a key of the words of the gate. */
	until: HoldUntil
	/** The day of the visit at which it began; an earlier one than today's was carried here. */
	since: string
}
/** Who or what ends a hold. */
export const holdUntils = [
	'outcome',
	'imaging-result',
	'treating-doctor',
	'surgeon',
	'foot-protection-review',
] as const
export type HoldUntil = (typeof holdUntils)[number]
export interface GatePart {
	/** not-established: a core question was neither answered nor set aside; see `unasked`. */
	state: 'held' | 'nothing-found' | 'not-established'
	/** The most urgent action that its signs ask for. */
	action: Action
	holds: Hold[]
	/** Ids of the findings behind it. */
	because: string[]
	/** Core questions that were not asked, by their id in `screening/core-questions.table.ts`. */
	unasked: string[]
}
export interface Gate {
	person: GatePart
	left: GatePart
	right: GatePart
}
