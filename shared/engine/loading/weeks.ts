/**
 * Session load by the week: sum, monotony, strain and change. Shown as numbers with a note, never
 * as a risk light.
 */
import type { LoadWeek } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { addDays } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'

interface RecordedWeek {
	from: string
	days: readonly number[]
}
const sumOf = (days: readonly number[]): number => days.reduce((sum, load) => sum + load, 0)

/**
 * Monotony of a week: mean over the sample standard deviation (n - 1) of its days; undefined where
 * every day is equal.
 * @internal
 */
export function monotony(days: readonly number[]): number | undefined {
	const mean = sumOf(days) / days.length
	const spread = Math.sqrt(sumOf(days.map((load) => (load - mean) ** 2)) / (days.length - 1))
	return spread > 0 ? mean / spread : undefined
}
/** Per cent more or less than the week just before; undefined where it is missing or empty. */
function changePercent(week: RecordedWeek, before: RecordedWeek | undefined): number | undefined {
	if (!before || addDays(before.from, 7) !== week.from) return undefined
	const last = sumOf(before.days)
	return last ? ((sumOf(week.days) - last) / last) * 100 : undefined
}
/**
 * @param weeks seven session loads each (effort 0 to 10 times minutes); change only where the week
 * before is recorded and not empty
 */
export function loadWeeks(weeks: readonly RecordedWeek[]): LoadWeek[] {
	const sorted = [...weeks].sort((week, other) => (week.from < other.from ? -1 : 1))
	return sorted.map((week, index) => {
		const sum = sumOf(week.days)
		const even = monotony(week.days)
		return present({
			from: week.from,
			sum,
			monotony: even,
			strain: even === undefined ? undefined : sum * even,
			changePercent: changePercent(week, sorted[index - 1]),
		})
	})
}
const weekReasons = ({ sum, monotony: even, changePercent: change }: LoadWeek): Because[] => [
	{ measure: 'sessionLoad', value: sum, unit: 'effort x min' },
	...(even === undefined ? [] : [{ measure: 'monotony', value: rounded(even, 3) }]),
	...(change === undefined
		? []
		: [{ measure: 'changeFromWeekBefore', value: rounded(change, 1), unit: '%' }]),
]
/** The usual rise and the most, where a week rose by more than the usual. */
function usualRise(changePercent: number | undefined, protocol: Protocol) {
	const risePercent = protocol.value('loading.weeklyRisePercent')
	return changePercent !== undefined && changePercent > risePercent
		? { risePercent, mostPercent: protocol.value('loading.weeklyRiseCapPercent') }
		: undefined
}
/** The latest week as it is read; nothing without a recorded week. */
export function weekFindings(weeks: readonly LoadWeek[], protocol: Protocol): Finding[] {
	const latest = weeks.at(-1)
	if (!latest) return []
	const { from, sum: load, changePercent: change } = latest
	const changePercent = change === undefined ? undefined : rounded(change, 0)
	const usual = usualRise(change, protocol)
	return [
		loadingFinding(
			state('loading.week', present({ from, load, changePercent, usual })),
			'note',
			weekReasons(latest),
			protocol.basis(
				'session load by the week (Foster 2001); Impellizzeri 2020 against risk from load ratios',
				'loading.weeklyRisePercent',
			),
		),
	]
}
