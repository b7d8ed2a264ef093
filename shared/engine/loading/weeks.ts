/**
 * Session load by the week: sum, monotony, strain and change. Shown as numbers with a note, never
 * as a risk light.
 */
import type { LoadWeek } from '../findings/assessment.ts'
import { addDays } from '../plain/days.ts'

/**
 * Monotony of a week: mean over the sample standard deviation (n - 1) of its days; undefined where
 * every day is equal.
 */
export function monotony(days: readonly number[]): number | undefined {
	const mean = days.reduce((sum, one) => sum + one, 0) / days.length
	const spread = Math.sqrt(
		days.reduce((sum, one) => sum + (one - mean) ** 2, 0) / (days.length - 1),
	)
	return spread > 0 ? mean / spread : undefined
}
/**
 * @param weeks seven session loads each (effort 0 to 10 times minutes); change only where the week
 * before is recorded and not empty
 */
export function loadWeeks(weeks: readonly { from: string; days: readonly number[] }[]): LoadWeek[] {
	const sorted = [...weeks].sort((a, b) => (a.from < b.from ? -1 : 1))
	return sorted.map(({ from, days }, at) => {
		const sum = days.reduce((total, one) => total + one, 0),
			even = monotony(days)
		const before = sorted[at - 1],
			last =
				before && addDays(before.from, 7) === from
					? before.days.reduce((total, one) => total + one, 0)
					: undefined
		return {
			from,
			sum,
			...(even === undefined ? {} : { monotony: even, strain: sum * even }),
			...(last ? { changePercent: ((sum - last) / last) * 100 } : {}),
		}
	})
}
