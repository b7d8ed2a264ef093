/** The length that a size label names: the formulas of `sizes.ts` the other way round. Pure. */
import type { Pair } from '../visit/visit.ts'
import { lengthOfSize, wrapSizes } from './sizes.ts'

type System = NonNullable<Pair['sizeSystem']>
/**
 * Foot length of a label, mm. Where child and adult scales name two lengths by one number, the one
 * nearer to a measured length is meant.
 * @param nearMm an inside length that was measured
 */
export function lengthOfLabel(system: System, label: number, nearMm: number): number {
	if (system === 'mondopoint') return label
	const wraps = system === 'uk' || system === 'au' || system === 'usChild'
	const lengths = (wraps ? [label, label + wrapSizes] : [label]).map((size) =>
		lengthOfSize(system, size),
	)
	return lengths.reduce((best, length) =>
		Math.abs(length - nearMm) < Math.abs(best - nearMm) ? length : best,
	)
}
