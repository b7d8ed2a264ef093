/** What the insert room returns. What it says stands as codes and parameters beside the words. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Stated, Statement } from '../words/statement.ts'
import type { Finding } from './finding.ts'

/**
 * One element of an insert: what, how much, within what, why. Ids stand in
 * shared/engine/words/en/insert-names.ts. One in the clinician's own words has no code.
 */
export interface InsertElement extends Stated {
	element: string
	value?: number
	unit?: string
	choice?: string
	range?: [number, number]
	where: 'boot' | 'trainer' | 'both'
	because: Because[]
	basis: Basis
	cautions: string[]
	/** The cautions as statements, in the same order. */
	cautioned?: Stated[]
}
export interface InsertSide {
	/**
	 * proposed: elements stand; not-needed: no symptom or finding calls for one; held: see
	 * stoppedBy. Records before 0.4 say stopped.
	 */
	state: 'proposed' | 'not-needed' | 'held' | 'stopped'
	stoppedBy: ({ id: string } & Stated)[]
	elements: InsertElement[]
}
/** Something that works against something else, or that gave way to it. */
export interface InsertConflict extends Statement {
	id: string
	side: 'left' | 'right'
	elements: string[]
	basis: Basis
}
export interface WearInStep extends Statement {
	when: string
}
export interface InsertResult {
	left: InsertSide
	right: InsertSide
	/** What the clinician's own figures run against; a proposal has none. */
	conflicts: InsertConflict[]
	/** What was called for and gave way, and to what; records of before 0.4 have none. */
	settled?: InsertConflict[]
	wearIn: WearInStep[]
	findings: Finding[]
}
