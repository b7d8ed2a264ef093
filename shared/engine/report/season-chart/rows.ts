/** The rows of the wall: the usual week, and a row for each week with a cell for each day. */
import { addDays } from '../../plain/days.ts'
import { present } from '../../plain/present.ts'
import type { Speak } from '../../words/speak.ts'
import { dayWords } from '../../words/words.ts'
import type { ChartCell, ChartEntry } from '../document.ts'
import type { Lettering } from './chart-input.ts'
import { isAtUsualTime, isUsual, type UsualSession, weekdayOfDate } from './usual.ts'
import type { WallSession, WallWeek } from './weeks.ts'

/** What the rows are drawn with. */
export interface Drawn {
	usual: readonly UsualSession[]
	/** Words of a day, by its date. */
	events: ReadonlyMap<string, readonly string[]>
	lettering: Lettering
	t: Speak
}
const daysOfWeek = [0, 1, 2, 3, 4, 5, 6]
const cellOf = ([first, ...more]: readonly ChartEntry[]): ChartCell =>
	first ? { ...first, ...present({ more: more.length > 0 ? more : undefined }) } : { text: '' }

/** One row: what is worn on each weekday, with its start. */
export function usualRow({ usual, lettering, t }: Drawn): ChartCell[] {
	return [
		{ text: '', below: t('chart.usual') },
		...daysOfWeek.map((weekday) =>
			cellOf(
				usual
					.filter((session) => session.weekday === weekday)
					.map(({ like }) => ({
						...wornEntry(like, lettering, t),
						below: [like.start, like.kind === 'match' ? t('chart.match') : '']
							.filter(Boolean)
							.join(' '),
					})),
			),
		),
	]
}
/** A row a week, Monday first; what is otherwise than usual stands out. */
export const weekRows = (weeks: readonly WallWeek[], drawn: Drawn): ChartCell[][] =>
	weeks.map(({ monday, sessions }) => [
		{ text: dayWords(monday) },
		...daysOfWeek.map((weekday) => {
			const held = sessions.filter(({ date }) => weekdayOfDate(date) === weekday)
			const entries = held.map((session) => dayEntry(session, drawn))
			const events = drawn.events.get(addDays(monday, weekday)) ?? []
			return cellOf([...entries, ...events.map((words) => ({ text: '', below: words }))])
		}),
	])
function dayEntry(session: WallSession, { usual, lettering, t }: Drawn): ChartEntry {
	const { start, kind, status, minutes, fullMinutes } = session
	// why a session is off is the player's own affair: only a bye, which all know, is named
	if (status) return { text: '', beside: status === 'bye' ? t('chart.bye') : t('chart.off') }
	const time = [
		isAtUsualTime(session, usual) ? '' : (start ?? ''),
		fullMinutes === undefined ? '' : t('chart.short', { minutes: minutes ?? '' }),
	]
		.filter(Boolean)
		.join(' ')
	// one thing beside the letter: a cell is narrow
	const isMatch = kind === 'match'
	return {
		...wornEntry(session, lettering, t),
		...present({
			beside: (isMatch ? t('chart.matchMark') : time) || undefined,
			below: (isMatch && time) || undefined,
			unusual: isUsual(session, usual) ? undefined : true,
		}),
	}
}
/** The pair in large print, those worn after it behind its pattern. */
function wornEntry(
	{ pair, parts = [] }: WallSession,
	{ letterOf, patternOf, insert }: Lettering,
	t: Speak,
): ChartEntry {
	const named = (id: string): string => `${letterOf(id)}${insert}`
	const [firstPart, ...later] = parts
	if (firstPart && later.length > 0)
		return {
			text: named(firstPart.pair),
			after: later.map((part) => named(part.pair)).join(' '),
			pattern: patternOf(firstPart.pair),
		}
	return pair === undefined
		? { text: t('chart.none') }
		: { text: named(pair), pattern: patternOf(pair) }
}
