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
export interface SeasonWeeks {
	/** Sessions by the Monday of their week; a week between the first and the last may have none. */
	sessions: Map<string, WallSession[]>
	/** ISO dates; undefined where there is no session. */
	first: string | undefined
	last: string | undefined
}
/** Sessions of the plan and those called off, by week. */
export function weeksOf(plan: PlanView): SeasonWeeks {
	const off = (plan.off ?? []).map((missed): WallSession => ({ ...missed, surface: '' }))
	const all = [...plan.sessions, ...off]
	const sessions = Map.groupBy(all, ({ date }) => isoWeek(date).monday)
	const dates = all.map(({ date }) => date).toSorted()
	const first = dates[0]
	const last = dates.at(-1)
	if (first !== undefined && last !== undefined)
		for (const monday of mondaysBetween(first, last))
			if (!sessions.has(monday)) sessions.set(monday, [])
	return { sessions, first, last }
}
function mondaysBetween(first: string, last: string): string[] {
	const mondays: string[] = []
	for (let day = dayNumber(isoWeek(first).monday); day <= dayNumber(last); day += 7)
		mondays.push(dateOfDay(day))
	return mondays
}
/** Words beside a week, by its Monday: pairs to replace, pairs to wear in, the review. */
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
	const byWeek = new Map<string, string[]>()
	for (const { date, words } of events) {
		if (!date) continue
		const { monday } = isoWeek(date)
		byWeek.set(monday, [...(byWeek.get(monday) ?? []), words])
	}
	return byWeek
}
