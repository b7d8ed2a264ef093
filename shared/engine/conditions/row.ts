/** What the table of conditions says of each one. */
import type { Strength } from '../protocol/basis.ts'
import type { ThresholdRow } from '../protocol/row.ts'
import type { Screening } from '../visit/recorded/screening.ts'
import type { Feature } from '../visit/terms.ts'

/** What one rule of a condition rests on. */
interface Ground {
	source: string
	strength: Strength
}
/** From when a rule holds: current or recovering, or past ones too. */
interface Held extends Ground {
	when: 'now' | 'ever'
}
/** Exercises that are often used; which, and how much, is the clinician's choice. */
export type Exercise =
	| 'calf-loading'
	| 'calf-loading-from-floor'
	| 'calf-and-peroneal-stretch'
	| 'heel-rise-strength'
	| 'balance'
	| 'foot-muscles'
	| 'knee-loading'
	| 'hip-and-knee-strength'
	| 'load-ladder'
	| 'toe-taping'
	| 'within-comfort'
/** Whole years of age, both included, at which it is usually seen. */
interface UsualAges extends Pick<ThresholdRow, 'population' | 'source' | 'strength' | 'surety'> {
	fromYears?: number
	toYears?: number
}
export interface ConditionRow {
	/** each: of one foot or leg, or of both; person: of the player; any: of either kind. */
	sides: 'each' | 'person' | 'any'
	/** Outside them the screen asks and a note says so; nothing is refused. */
	ages?: UsualAges
	exercises?: readonly Exercise[]
	/** The warning-sign questions that belong to it. */
	opens?: readonly `screening.${keyof Screening}`[]
	/** More that is recorded of it than side, status, pain and note. */
	asks?: readonly ('operation' | 'own-words')[]
	/** What it asks of a shoe; its sentence stands with its words, as `shoe`. */
	shoe?: Held & { seek: readonly Feature[]; avoid: readonly Feature[] }
	/** What to be careful of; its sentence stands with its words, as `caution`. */
	caution?: Held
}
