/** What the insert room returns. */
import type { Basis, Because } from '../protocol/basis.ts'
import type { Finding } from './finding.ts'

/**
 * One element of an insert: what, how much, within what, why. Ids stand in
 * shared/engine/insert/element-words.ts.
 */
export interface InsertElement {
	element: string
	value?: number
	unit?: string
	choice?: string
	range?: [number, number]
	where: 'boot' | 'trainer' | 'both'
	says: string
	because: Because[]
	basis: Basis
	cautions: string[]
}
export interface InsertSide {
	/**
	 * proposed: elements stand; not-needed: no symptom or finding calls for one; stopped: see
	 * stoppedBy
	 */
	state: 'proposed' | 'not-needed' | 'stopped'
	stoppedBy: { id: string; says: string }[]
	elements: InsertElement[]
}
export interface InsertConflict {
	id: string
	side: 'left' | 'right'
	elements: string[]
	says: string
	basis: Basis
}
export interface WearInStep {
	when: string
	says: string
}
export interface InsertResult {
	left: InsertSide
	right: InsertSide
	conflicts: InsertConflict[]
	wearIn: WearInStep[]
	findings: Finding[]
}
