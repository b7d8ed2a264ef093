/** The rows of the wall: a week each, or several where its sessions need more room. */
import { dayNumber } from '../../plain/days.ts'
import type { Speak } from '../../words/speak.ts'
import { dayWords, weekdays } from '../../words/words.ts'
import type { ChartCell } from '../document.ts'
import { isoWeek, weekdayOf } from '../iso-week.ts'
import type { Lettering } from './chart-input.ts'
import type { SeasonWeeks, WallSession } from './weeks.ts'

/** @param columns sessions side by side; those of a full week go on in a further row */
export function weekRows(
	{ sessions: weeks }: SeasonWeeks,
	events: ReadonlyMap<string, readonly string[]>,
	columns: number,
	lettering: Lettering,
	t: Speak,
): ChartCell[][] {
	return [...weeks]
		.toSorted(([a], [b]) => (a < b ? -1 : 1))
		.flatMap(([monday, sessions]) => {
			const cells = sessions
				.toSorted((a, b) => (startOf(a) < startOf(b) ? -1 : 1))
				.map((session) => sessionCell(session, lettering, t))
			const lines = Math.max(1, Math.ceil(cells.length / columns))
			return Array.from({ length: lines }, (_, line): ChartCell[] => {
				const shown = cells.slice(line * columns, (line + 1) * columns)
				const notes = [
					...(line === 0 ? (events.get(monday) ?? []) : []),
					...(cells.length === 0 ? [t('chart.noSession')] : []),
				]
				return [
					weekCell(monday, line, t),
					...Array.from({ length: columns }, (_, column) => shown[column] ?? { text: '' }),
					{ text: '', below: notes.join(', ') },
				]
			})
		})
}
const startOf = ({ date, start }: WallSession): string => `${date} ${start ?? ''}`
function weekCell(monday: string, line: number, t: Speak): ChartCell {
	const { week } = isoWeek(monday)
	return {
		text: line === 0 ? String(week) : t('chart.continued', { week }),
		below: t('chart.weekOf', { date: dayWords(monday) }),
	}
}
function sessionCell(session: WallSession, lettering: Lettering, t: Speak): ChartCell {
	const { date, start, kind, status, minutes, fullMinutes } = session
	const when = `${weekdays[weekdayOf(dayNumber(date))]} ${start ?? dayWords(date)}`
	// why a session is off is the player's own affair: only a bye, which all know, is named
	if (status) return { text: status === 'bye' ? t('chart.bye') : t('chart.off'), below: when }
	const below = [
		when,
		...(kind === 'match' ? [t('chart.match')] : []),
		...(fullMinutes === undefined ? [] : [t('chart.short', { minutes: minutes ?? '' })]),
	].join(' ')
	return wornCell(session, below, lettering, t)
}
/** The pair in large print, those worn after it behind its pattern. */
function wornCell(
	{ pair, parts = [] }: WallSession,
	below: string,
	{ letterOf, patternOf, insert }: Lettering,
	t: Speak,
): ChartCell {
	const [firstPart, ...later] = parts
	if (firstPart && later.length > 0)
		return {
			text: `${letterOf(firstPart.pair)}${insert}`,
			after: later.map((part) => `${letterOf(part.pair)}${insert}`).join(' '),
			below,
			pattern: patternOf(firstPart.pair),
		}
	return pair === undefined
		? { text: t('chart.none'), below }
		: { text: `${letterOf(pair)}${insert}`, below, pattern: patternOf(pair) }
}
