/**
 * The gate: what danger holds back, for the player as a whole or for a limb. What is held is
 * proposed nowhere: no screen, page, plan or shelf.
 */
import type { Holdable, HoldUntil } from '../visit/holdables.ts'
import type { Action } from './screening-result.ts'

export type { Holdable } from '../visit/holdables.ts'

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
