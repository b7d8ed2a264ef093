/** Left and right, handled once. */
import type { Side } from './visit.ts'

export const bothSides: readonly Side[] = ['left', 'right']
export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left')
/** The same calculation for each side, kept apart: { left, right }. */
export function perSide<T>(calculate: (side: Side) => T): { left: T; right: T } {
	return { left: calculate('left'), right: calculate('right') }
}
/** Mean of a measure that is absent, one number or repeats; undefined where not measured. */
export function meanOf(value: number | readonly number[] | undefined): number | undefined {
	if (value === undefined) return undefined
	if (typeof value === 'number') return value
	return value.length === 0 ? undefined : value.reduce((sum, one) => sum + one, 0) / value.length
}
/** Rounds for reading: value to `digits` places, no trailing artefacts of binary fractions. */
export function rounded(value: number, digits: number): number {
	const scale = 10 ** digits
	return Math.round((value + Number.EPSILON) * scale) / scale
}
