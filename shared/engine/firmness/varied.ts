/** The measures of a visit that have a published repeat error, and a visit with them moved. */
import { rowOf } from '../findings/measure-rows.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { numberMeasures, sidesOf } from '../visit/measures/catalogue.ts'
import { measured, pathOn, recordedAt } from '../visit/measures/value.ts'
import type { Visit } from '../visit/visit.ts'

/** A measure that was taken, and the standard error of what was recorded, in its unit. */
export interface Varied {
	key: string
	path: string
	error: number
}
/** The error of one reading; common practice is no published error. */
function readingError(rows: readonly string[] | 'none', protocol: Protocol): number | undefined {
	if (rows === 'none') return undefined
	const [row] = rows
		.map((key) => protocol.row(rowOf(key)))
		.filter(({ strength }) => strength !== 'practice')
	return row?.value
}
/** Measures of the catalogue of which an error is published, by key. */
export const hasPublishedError = (key: string, protocol: Protocol): boolean =>
	numberMeasures.some(
		(placed) =>
			placed.key === key && readingError(placed.measure.repeatError, protocol) !== undefined,
	)
/** In the order of the walk; the mean of repeats has a smaller error than one reading. */
export function variedMeasures(visit: Visit, protocol: Protocol): Varied[] {
	return numberMeasures.flatMap((placed) => {
		const error = readingError(placed.measure.repeatError, protocol)
		if (error === undefined) return []
		return sidesOf(placed).flatMap((side) => {
			if (measured(visit, placed, side) === undefined) return []
			const path = pathOn(placed, side)
			const readings = [recordedAt(visit, path)].flat().length
			return [{ key: placed.key, path, error: error / Math.sqrt(Math.max(1, readings)) }]
		})
	})
}
type Branch = Readonly<Record<string, unknown>>
const added = (recorded: unknown, by: number): unknown =>
	Array.isArray(recorded)
		? recorded.map((reading: unknown) => added(reading, by))
		: typeof recorded === 'number'
			? recorded + by
			: recorded
function addedAt(branch: Branch, [key = '', ...deeper]: readonly string[], by: number): Branch {
	const here = branch[key]
	if (deeper.length === 0) return { ...branch, [key]: added(here, by) }
	return { ...branch, [key]: addedAt((here ?? {}) as Branch, deeper, by) }
}
/** The visit with each measure moved by so many of its standard errors; the visit is not changed. */
export const moved = (visit: Visit, measures: readonly Varied[], by: readonly number[]): Visit =>
	measures.reduce<Branch>(
		(now, { path, error }, index) => addedAt(now, path.split('.'), error * (by[index] ?? 0)),
		visit,
	) as unknown as Visit
