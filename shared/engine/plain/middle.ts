/** The middle and the ends of some values. Pure. */

const inOrder = (values: readonly number[]): number[] => values.toSorted((a, b) => a - b)

/** The value below which a share of them lies, linear between neighbours; undefined of none. */
export function quantile(values: readonly number[], share: number): number | undefined {
	const sorted = inOrder(values)
	const place = (sorted.length - 1) * share
	const below = sorted[Math.floor(place)]
	const above = sorted[Math.ceil(place)]
	if (below === undefined || above === undefined) return undefined
	return below + (above - below) * (place - Math.floor(place))
}
/** Number, median and range. */
export interface Spread {
	n: number
	median: number
	low: number
	high: number
}
/** Undefined of no value. */
export function spreadOf(values: readonly number[]): Spread | undefined {
	const [median, low, high] = [quantile(values, 0.5), quantile(values, 0), quantile(values, 1)]
	if (median === undefined || low === undefined || high === undefined) return undefined
	return { n: values.length, median, low, high }
}
