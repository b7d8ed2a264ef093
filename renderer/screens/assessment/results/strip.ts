/**
 * One scale with left and right on it: the readings as marks, the limit that judges them with its
 * error, and the bands between. Data only; `parts/StripDrawing.tsx` draws it. Pure.
 */
interface StripMark {
	value: number
	/** Filled marks are compared; hollow ones only stand there. */
	filled: boolean
	/** How far the value may lie off. */
	low?: number
	high?: number
}
export interface StripLane {
	/** 'left', 'right', 'age now'. */
	name: string
	/** The reading in words, with what it comes to. */
	says: string
	/** One, or two that are joined by a line. */
	marks: readonly StripMark[]
}
export interface StripZone {
	from: number
	to: number
	name: string
	/** The one that is looked for or stands out. */
	lit: boolean
}
export interface StripLimit {
	value: number
	/** Either side. */
	error?: number
}
export interface Strip {
	key: string
	title: string
	/** What stands behind the title: 'decides', or why nothing is judged. */
	aside: string
	low: number
	high: number
	zones: readonly StripZone[]
	limits: readonly StripLimit[]
	lanes: readonly StripLane[]
	/** Under the scale: the limit in words. */
	note: string
}
/** The ends of a scale: the usual ones, wider where a value lies outside, in whole steps. */
export function endsOf(
	[usualLow, usualHigh]: readonly [number, number],
	values: readonly number[],
	step = 5,
): { low: number; high: number } {
	return {
		low: Math.floor(Math.min(usualLow, ...values) / step) * step,
		high: Math.ceil(Math.max(usualHigh, ...values) / step) * step,
	}
}
/** Where a value stands on a scale, per cent of its length; never outside it. */
export function percentAt({ low, high }: Pick<Strip, 'low' | 'high'>, value: number): number {
	if (high <= low) return 0
	return Math.min(100, Math.max(0, ((value - low) / (high - low)) * 100))
}
