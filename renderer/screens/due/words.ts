/** What is due in words: weeks, items, how they stand. Pure. */
import type { RecallItem } from '../../../shared/desk/recall/calls.ts'
import { dueWords } from '../../../shared/desk/recall/item.ts'
import { mondayOf, type Standing } from '../../../shared/desk/recall/standing.ts'
import { addDays, dayInWords, daysPerWeek } from '../../../shared/engine/plain/days.ts'

/** @param week `overdue`, or a Monday. @param today ISO date */
export function weekWords(week: string, today: string): string {
	if (week === 'overdue') return 'Overdue'
	const monday = mondayOf(today)
	if (week === monday) return 'This week'
	if (week === addDays(monday, daysPerWeek)) return 'Next week'
	return `Week of ${dayInWords(week)}`
}
/** What an item is, without its day: 'A pair runs out (match boots)'. */
export const itemName = ({ kind, detail }: Pick<RecallItem, 'kind' | 'detail'>): string =>
	`${dueWords[kind]}${detail ? ` (${detail})` : ''}`
/** The same with the day by which. */
export const itemWords = (item: RecallItem): string => `${itemName(item)} by ${dayInWords(item.on)}`

/** The ways to look at the list; the first is shown where none is chosen. */
export const shows: readonly { title: string; show: Standing | undefined }[] = [
	{ title: 'All that is open', show: undefined },
	{ title: 'Due', show: 'due' },
	{ title: 'Booked', show: 'booked' },
	{ title: 'Asked to wait', show: 'waits' },
	{ title: 'Ended without a visit', show: 'ended' },
]
export const showOf = (title: string): Standing | undefined =>
	shows.find((known) => known.title === title)?.show

export const counted = (count: number, one: string, many: string): string =>
	count === 1 ? `One ${one}` : `${count} ${many}`
