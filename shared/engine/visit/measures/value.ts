/** What was recorded of a measure, as one number. */
import { meanOf } from '../sides.ts'
import type { Side, Visit } from '../visit.ts'
import { type Placed, pathsOf } from './catalogue.ts'
import type { Measure, NumberMeasure } from './measure.ts'

/** What stands at a dotted path of the visit; undefined where nothing does. */
export const recordedAt = (visit: Visit, path: string): unknown =>
	path
		.split('.')
		.reduce<unknown>(
			(here, key) =>
				here !== null && typeof here === 'object'
					? (here as Record<string, unknown>)[key]
					: undefined,
			visit,
		)
/** The path of a measure on a side; a measure without sides has one. */
export const pathOn = (
	placed: Pick<Placed, 'group' | 'sided' | 'key'>,
	side: Side | undefined,
): string => {
	const [first, second] = pathsOf(placed)
	return side === 'right' ? (second ?? first) : first
}
/** One number for what was recorded: the mean of repeats, the sum of items. */
export function asNumber(measure: Measure, recorded: unknown): number | undefined {
	const readings = recorded as number | readonly number[] | undefined
	const added = 'readings' in measure && typeof measure.readings === 'object'
	return added && Array.isArray(readings)
		? readings.reduce((sum: number, item: number) => sum + item, 0)
		: meanOf(readings)
}
/** A measure at a visit, in its unit; undefined where it was not taken. */
export const measured = (
	visit: Visit,
	placed: Placed<NumberMeasure>,
	side?: Side,
): number | undefined => asNumber(placed.measure, recordedAt(visit, pathOn(placed, side)))
