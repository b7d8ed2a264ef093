/**
 * Session load by the week: sum, monotony, strain and change. Shown as numbers with a note, never
 * as a risk light.
 */
import type { LoadWeek } from '../findings/assessment.ts'
import type { Finding, Working } from '../findings/finding.ts'
import {
	equation,
	exactly,
	type Formula,
	minus,
	over,
	plus,
	quantity,
	times,
} from '../findings/formula.ts'
import { linesOf } from '../findings/working.ts'
import { addDays } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'

export interface RecordedWeek {
	from: string
	days: readonly number[]
}
const sumOf = (days: readonly number[]): number => days.reduce((sum, load) => sum + load, 0)

const loads = (days: readonly number[]): Formula => {
	const [first = exactly(0), ...more] = days.map((load) => quantity(load, 1))
	return plus(first, ...more)
}
/** Sample standard deviation (n - 1). */
function spreadOf(days: readonly number[]): number {
	const mean = sumOf(days) / days.length
	return Math.sqrt(sumOf(days.map((load) => (load - mean) ** 2)) / (days.length - 1))
}
/** Monotony of a week: mean over standard deviation; undefined where every day is equal. */
function evenness(days: readonly number[]): Formula | undefined {
	const spread = spreadOf(days)
	const mean = over(quantity(sumOf(days), 1), exactly(days.length))
	return spread > 0 ? over(mean, quantity(spread)) : undefined
}
/**
 * Monotony of a week: mean over the sample standard deviation (n - 1) of its days; undefined where
 * every day is equal.
 * @internal
 */
export const monotony = (days: readonly number[]): number | undefined => evenness(days)?.value
const strainOf = (sum: number, even: number): Formula => times(quantity(sum, 1), quantity(even, 3))
/** Per cent more or less than the week just before; undefined where it is missing or empty. */
function changePercent(week: RecordedWeek, before: RecordedWeek | undefined): Formula | undefined {
	if (!before || addDays(before.from, 7) !== week.from) return undefined
	const last = sumOf(before.days)
	if (last === 0) return undefined
	const more = minus(quantity(sumOf(week.days), 1), quantity(last, 1))
	return times(over(more, quantity(last, 1)), exactly(100))
}
const inOrder = (weeks: readonly RecordedWeek[]): RecordedWeek[] =>
	weeks.toSorted((week, other) => (week.from < other.from ? -1 : 1))
/**
 * @param weeks seven session loads each (effort 0 to 10 times minutes); change only where the week
 * before is recorded and not empty
 */
export function loadWeeks(weeks: readonly RecordedWeek[]): LoadWeek[] {
	const sorted = inOrder(weeks)
	return sorted.map((week, index) => {
		const sum = sumOf(week.days)
		const even = monotony(week.days)
		return present({
			from: week.from,
			sum,
			monotony: even,
			strain: even === undefined ? undefined : strainOf(sum, even).value,
			changePercent: changePercent(week, sorted[index - 1])?.value,
		})
	})
}
const weekRule =
	'session load by the week (Foster 2001); Impellizzeri 2020 against risk from load ratios'
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
			protocol.basis(weekRule, 'loading.weeklyRisePercent'),
		),
	]
}
/** How the numbers of the latest week were worked out. */
export function weekWorkings(weeks: readonly RecordedWeek[], protocol: Protocol): Working[] {
	const [before, latest] = [undefined, ...inOrder(weeks)].slice(-2)
	if (!latest) return []
	const even = evenness(latest.days)
	const change = changePercent(latest, before)
	return [
		{
			id: 'loading.week',
			title: `Session load, week from ${latest.from}`,
			lines: linesOf(
				`Effort 0 to 10 times minutes, day by day: ${equation(loads(latest.days))}`,
				even
					? `Monotony, mean over sample standard deviation: ${equation(even, '', 3)}`
					: 'Monotony: none, every day is equal',
				even && `Strain, sum times monotony: ${equation(strainOf(sumOf(latest.days), even.value))}`,
				change && `Change from the week before: ${equation(change, '%', 1)}`,
			),
			basis: protocol.basis(weekRule, 'loading.weeklyRisePercent'),
		},
	]
}
