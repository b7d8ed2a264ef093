/** Dates of a roster, which are written in more than one way. */
import { isDay, twoDigits } from '../../engine/plain/days.ts'

const isoDate = /^\d{4}-\d{2}-\d{2}$/
const shortDate = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/
/** A month's number is never above it, a day's may be. */
const mostMonths = 12

/** What comes first in a short date; undefined where it cannot be told. */
export type DayOrder = 'day-first' | 'month-first' | undefined

/** Day and month in the only order that fits the whole column; undefined where both would. */
export function dayOrderOf(cells: readonly string[]): DayOrder {
	const dates = cells.flatMap((cell) => {
		const [, first, second] = shortDate.exec(cell.trim()) ?? []
		return first === undefined ? [] : [{ first: Number(first), second: Number(second) }]
	})
	if (dates.some(({ first }) => first > mostMonths)) return 'day-first'
	return dates.some(({ second }) => second > mostMonths) ? 'month-first' : undefined
}
/** What is wrong with a cell: a code to go by, and the words. */
export interface WrongCell {
	code: string
	message: string
}
const notADay = (given: string): WrongCell => ({
	code: 'not-in-calendar',
	message: `not a date of the calendar, given "${given}", allowed: a date such as 2012-04-17 or 17/04/2012`,
})

/** A cell as an ISO date, or what is wrong with it. */
export function isoOf(text: string, order: DayOrder): { iso?: string; wrong?: WrongCell } {
	const given = text.trim()
	if (isoDate.test(given)) return isDay(given) ? { iso: given } : { wrong: notADay(given) }
	const found = shortDate.exec(given)
	if (!found)
		return {
			wrong: {
				code: 'not-a-date',
				message: `not a date, given "${given}", allowed: a date such as 2012-04-17 or 17/04/2012`,
			},
		}
	const [, first = '', second = '', year = ''] = found
	if (order === undefined && first !== second)
		return {
			wrong: {
				code: 'day-or-month',
				message:
					`day and month cannot be told apart, given "${given}", allowed: a date such as ` +
					'2012-04-17',
			},
		}
	const [day, month] = order === 'month-first' ? [second, first] : [first, second]
	const iso = `${year}-${twoDigits(month)}-${twoDigits(day)}`
	return isDay(iso) ? { iso } : { wrong: notADay(given) }
}
