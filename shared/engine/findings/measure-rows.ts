/** The protocol rows that the definitions of the measures name. */
import type { ThresholdKey } from '../protocol/protocol.ts'
import type { sections } from '../visit/measures/catalogue.ts'
import type { None } from '../visit/measures/measure.ts'

type Tables = (typeof sections)[keyof typeof sections]['measures']
type Each<Table> = Table extends unknown ? Table[keyof Table] : never
type InList<Fact> = Fact extends readonly (infer Key)[] ? Key : never
type Named<Measure> =
	| (Measure extends { repeatError: infer Rows } ? InList<Rows> : never)
	| (Measure extends { norms: { rows: infer Rows } } ? InList<Rows> : never)
	| (Measure extends { trend: { cutOff: { row: infer Key } } } ? Key : never)
	| (Measure extends { realChange: infer Real }
			? Real extends { same: infer Same; different: infer Different; unknown: infer Unknown }
				? Same | Different | Unknown
				: never
			: never)
type Row<Key extends ThresholdKey> = Key
/** A definition that names a row which does not exist is refused here by the compiler. */
export type MeasureRow = Row<Exclude<Named<Each<Tables>>, None>>

/** The row of a key that a definition names. */
export const rowOf = (key: string): MeasureRow => key as MeasureRow
