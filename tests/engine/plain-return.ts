/**
 * Back after four weeks injured or more, worked out again from the written plan: half of the middle
 * week, then a tenth and 30 minutes more each week.
 */
import type { Plan } from '../../shared/engine/season/plan-file.ts'
import { mondayOf } from './plain-week.ts'

const dayMs = 86_400_000
const daysBetween = (first: string, second: string): number =>
	(Date.parse(second) - Date.parse(first)) / dayMs
const weeksLater = (monday: string, weeks: number): string =>
	new Date(Date.parse(monday) + weeks * 7 * dayMs).toISOString().slice(0, 10)
const median = (list: number[]): number =>
	list.sort((left, right) => left - right)[Math.floor(list.length / 2)] ?? 0

/** Minutes of the middle week, as the others play it. */
function usualWeek({ sessions }: Plan): number {
	const weeks = Map.groupBy(sessions, ({ date }) => mondayOf(date))
	return median(
		[...weeks.values()].map((week) =>
			week.reduce((sum, { minutes, fullMinutes }) => sum + (fullMinutes ?? minutes), 0),
		),
	)
}
/** The days on which a player came back after four weeks injured or more. */
function returns(plan: Plan): { since: string; back: string }[] {
	const moment = ({ date, start = '' }: { date: string; start?: string | undefined }) =>
		`${date} ${start}`
	const all: { date: string; start?: string | undefined; status?: string }[] = [
		...plan.sessions,
		...plan.off,
	].sort((left, right) => (moment(left) < moment(right) ? -1 : 1))
	const found: { since: string; back: string }[] = []
	let since: string | undefined
	for (const { date, status } of all) {
		if (status === 'injured') since ??= date
		if (status !== undefined) continue
		if (since !== undefined && daysBetween(since, date) >= 28) found.push({ since, back: date })
		since = undefined
	}
	return found
}
/** Every week of a return in which more is planned than was allowed. */
export function returnBroken(plan: Plan): [rule: 'return', ...about: (string | number)[]][] {
	const broken: ReturnType<typeof returnBroken> = []
	const usual = usualWeek(plan)
	for (const { since, back } of returns(plan))
		for (let [week, most] = [0, usual / 2]; most < usual; week++, most = most * 1.1 + 30) {
			const monday = weeksLater(mondayOf(back), week)
			const planned = plan.sessions
				.filter(({ past, date }) => !past && mondayOf(date) === monday && date >= back)
				.reduce((sum, { minutes }) => sum + minutes, 0)
			if (planned > most + 0.01) broken.push(['return', monday, planned, most, since])
		}
	return broken
}
