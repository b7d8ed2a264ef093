/** The weeks of a season: their sessions, held or not, and what else falls into them. */
import { dateOfDay, dayNumber } from '../../plain/days.ts'
import type { Speak } from '../../words/speak.ts'
import type { PlanView } from '../inputs.ts'
import { isoWeek } from '../iso-week.ts'
import type { ChartInput, Lettering } from './chart-input.ts'

/** A session of the plan, or one that does not take place. */
export type WallSession = PlanView['sessions'][number] & {
	status?: 'cancelled' | 'bye' | 'injured'
}
/** A week by its Monday; one between the first and the last may have no session. */
export interface WallWeek {
	monday: string
	sessions: WallSession[]
}
/** Half a season: what one page holds. */
const weeksOnPage = 26

const startOf = ({ date, start }: WallSession): string => `${date} ${start ?? ''}`
/** Sessions of the plan and those called off by week, without a gap, in order of time. */
export function weeksOf(plan: PlanView): WallWeek[] {
	const off = (plan.off ?? []).map((missed): WallSession => ({ ...missed, surface: '' }))
	const all = [...plan.sessions, ...off].toSorted((a, b) => (startOf(a) < startOf(b) ? -1 : 1))
	const [first, last] = [all[0], all.at(-1)]
	if (!first || !last) return []
	const sessions = Map.groupBy(all, ({ date }) => isoWeek(date).monday)
	return mondaysBetween(first.date, last.date).map((monday) => ({
		monday,
		sessions: sessions.get(monday) ?? [],
	}))
}
function mondaysBetween(first: string, last: string): string[] {
	const mondays: string[] = []
	for (let day = dayNumber(isoWeek(first).monday); day <= dayNumber(last); day += 7)
		mondays.push(dateOfDay(day))
	return mondays
}
/** As few pages as hold them, each with as many weeks as the others, or one fewer. */
export function pagesOfWeeks(weeks: readonly WallWeek[]): WallWeek[][] {
	const pages = Math.max(1, Math.ceil(weeks.length / weeksOnPage))
	const at = (page: number): number => Math.ceil((page * weeks.length) / pages)
	return Array.from({ length: pages }, (_, page) => weeks.slice(at(page), at(page + 1)))
}
/** Words of a day, by its date: pairs to replace, pairs to wear in, the review. */
export function eventsOf(
	{ visit, buying, reviewDate, plan }: ChartInput,
	{ letterOf }: Lettering,
	t: Speak,
): Map<string, string[]> {
	const events = [
		...plan.pairs.map(({ id, replaceBy }) => ({
			date: buying ? replaceBy : undefined,
			words: t('chart.replace', { letter: letterOf(id) }),
		})),
		...(visit.footwear ?? []).map(({ id, newFrom }) => ({
			date: newFrom,
			words: t('chart.wearIn', { letter: letterOf(id) }),
		})),
		{ date: reviewDate, words: t('chart.review') },
	]
	const byDay = new Map<string, string[]>()
	for (const { date, words } of events)
		if (date) byDay.set(date, [...(byDay.get(date) ?? []), words])
	return byDay
}
