/** What a statement rests on: the numbers put in, the rule, its source and how strong it is. */
export type Strength =
	| 'standard'
	| 'guideline'
	| 'trial'
	| 'cohort'
	| 'cross-sectional'
	| 'expert'
	| 'practice'
	| 'clinic'
/** The number or fact a finding rests on. */
export interface Because {
	/** A measure of the visit by its key, a condition, or a name of words/en/readings.ts. */
	measure: string
	/** The foot or leg it was read on; left out where it has none. */
	side?: 'left' | 'right' | 'both'
	/** A number, a term of a list, a day, or what a person typed. */
	value: number | string
	unit?: string
	/** The day or moment it is of, where it is of one: 2027-01-12 or 2027-01-12T18:00. */
	at?: string
}
/** The rule, the threshold row of the protocol and its source. */
export interface Basis {
	rule: string
	/** The key of the row; records before 0.3 wrote its value behind it. */
	threshold?: string
	/** What the row was set to, in its unit, when the rule was used. */
	limit?: { value: number; unit: string }
	source: string
	strength: Strength
	/** No publication stands behind it: `source` says so itself, and how strong it is. */
	unsourced?: true
}
/** The ground of a rule that no publication stands behind. */
export const commonPractice = {
	source: 'common practice, no source',
	strength: 'practice',
	unsourced: true,
} as const satisfies Omit<Basis, 'rule'>
