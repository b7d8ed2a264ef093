/** Left and right, handled once. */
import type { Side } from './visit.ts'

/** In the order in which they are always named. */
export const bothSides: readonly Side[] = ['left', 'right']
export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left')
/** The same calculation for each side, kept apart: { left, right }. */
export function perSide<Result>(calculate: (side: Side) => Result): {
	left: Result
	right: Result
} {
	return { left: calculate('left'), right: calculate('right') }
}
/** Mean of a measure that is absent, one number or repeats; undefined where not measured. */
export function meanOf(value: number | readonly number[] | undefined): number | undefined {
	if (value === undefined) return undefined
	if (typeof value === 'number') return value
	if (value.length === 0) return undefined
	return value.reduce((sum, reading) => sum + reading, 0) / value.length
}
/** Rounds for reading: value to `digits` places, no trailing artefacts of binary fractions. */
export function rounded(value: number, digits: number): number {
	const scale = 10 ** digits
	return Math.round((value + Number.EPSILON) * scale) / scale
}
