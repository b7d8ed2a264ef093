/** What the insert room returns. What it says stands as codes and parameters beside the words. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Statement } from '../words/statement.ts'
import type { Finding } from './finding.ts'

/** A sentence, with its code and parameters; the clinician's own words and older records have none. */
type Said = Pick<Statement, 'says'> & Partial<Statement>
/**
 * One element of an insert: what, how much, within what, why. Ids stand in
 * shared/engine/words/en/insert-names.ts.
 */
export interface InsertElement extends Said {
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
	cautioned?: Statement[]
}
export interface InsertSide {
	/**
	 * proposed: elements stand; not-needed: no symptom or finding calls for one; stopped: see
	 * stoppedBy
	 */
	state: 'proposed' | 'not-needed' | 'stopped'
	stoppedBy: ({ id: string } & Said)[]
	elements: InsertElement[]
}
export interface InsertConflict extends Said {
	id: string
	side: 'left' | 'right'
	elements: string[]
	basis: Basis
}
export interface WearInStep extends Said {
	when: string
}
export interface InsertResult {
	left: InsertSide
	right: InsertSide
	conflicts: InsertConflict[]
	wearIn: WearInStep[]
	findings: Finding[]
}
