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
/** The rule, the threshold row of the protocol (by its key) and its source. */
export interface Basis {
	rule: string
	threshold?: string
	source: string
	strength: Strength
}
