/** What is kept for each side, and what has changed since an earlier visit. */

export interface PerSide<T> {
	left: T
	right: T
}
/**
 * A change since the last visit that has the measure; real only from the published smallest real
 * change.
 */
export interface Change {
	since: string
	was: number
	now: number
	change: number
	unit: string
	examiners: 'same' | 'different' | 'unknown'
	/** The smallest change called real, where one is published. */
	smallestReal?: number
	verdict: 'real' | 'within-error' | 'cannot-compare'
	/** Why the two cannot be compared. */
	why?: string
}
export type Changes<K extends string> = PerSide<Partial<Record<K, Change>>>
