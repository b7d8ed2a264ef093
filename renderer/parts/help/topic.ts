/** The help of a measure, as its definition has it. */

import { type MeasureRow, rowOf } from '../../../shared/engine/findings/measure-rows.ts'
import {
	catalogue,
	isNumber,
	measureAt,
	type Placed,
} from '../../../shared/engine/visit/measures/catalogue.ts'
import type { Help, Measure } from '../../../shared/engine/visit/measures/measure.ts'

export interface MeasureHelp extends Help {
	title: string
	/** Protocol rows that say what is beyond error; read from the protocol in force. */
	errors: readonly MeasureRow[]
	/** Protocol rows that it is held against. */
	norms: readonly MeasureRow[]
}
const rowsOf = (keys: readonly string[]): MeasureRow[] =>
	[...new Set(keys)].filter((key) => key !== 'none').map(rowOf)
function errorsOf(measure: Measure): MeasureRow[] {
	if (!isNumber(measure)) return []
	const { realChange, repeatError } = measure
	return rowsOf([
		...(realChange === 'none' ? [] : [realChange.same, realChange.different, realChange.unknown]),
		...(repeatError === 'none' ? [] : repeatError),
	])
}
const normsOf = (measure: Measure): MeasureRow[] =>
	isNumber(measure) && measure.norms !== 'none' ? rowsOf(measure.norms.rows) : []

const helpWith = ({ measure }: Placed): MeasureHelp | undefined =>
	measure.help === 'none'
		? undefined
		: { title: measure.label, ...measure.help, errors: errorsOf(measure), norms: normsOf(measure) }

/** The help of the field at a path; undefined where a field needs none. */
export function helpOf(path: string): MeasureHelp | undefined {
	const placed = measureAt(path)
	return placed && helpWith(placed)
}
/** Every measure that has help, by its key, in the order of the walk. */
export const measureHelp: readonly (readonly [key: string, help: MeasureHelp])[] =
	catalogue.flatMap((placed) => {
		const help = helpWith(placed)
		return help ? [[placed.key, help] as const] : []
	})
