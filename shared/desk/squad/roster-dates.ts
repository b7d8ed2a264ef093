/**
 * Dates of a roster, which are written in many ways. What comes first in 03/04/2012 is told by the
 * other rows of the file, or asked; it is never guessed.
 */
import {
	type DayOrder,
	dayOrders,
	isoOfWritten,
	orderIn,
	writtenIn,
} from '../workplace/written-day.ts'

export { type DayOrder, dayOrders }

/** What is wrong with a cell: a code to go by, and the words. */
export interface WrongCell {
	code: string
	message: string
}
/** How the dates of a file are read, and by what. */
export interface DateReading {
	/** absent where it must be asked */
	order?: DayOrder
	/** how many dates can be read both ways */
	open: number
	/** how many rows tell each order */
	told: Record<DayOrder, number>
	/** the first date that tells it, as it is written */
	example?: string
}
/**
 * What comes first in the dates of a file. It is taken from the file where all rows that tell it
 * agree, and are at least as many as those that can be read both ways: one odd row turns nothing.
 * @param answer what the person at the screen said
 */
export function dateReading(
	cells: readonly string[],
	on: string,
	answer: DayOrder | undefined,
): DateReading {
	const orders = cells.map((cell) => orderIn(writtenIn(cell, on)))
	const count = (wanted: DayOrder | 'either') => orders.filter((order) => order === wanted).length
	const told = { 'day-first': count('day-first'), 'month-first': count('month-first') }
	const open = count('either')
	const [only, other] = dayOrders.filter((order) => told[order] > 0)
	const isTold = only !== undefined && other === undefined && told[only] >= open
	const order = answer ?? (isTold ? only : undefined)
	const example = cells[orders.findIndex((found) => found !== undefined && found !== 'either')]
	return { ...(order && { order }), open, told, ...(example !== undefined && { example }) }
}
const allowed = 'a date such as 2012-04-17, 17 April 2012 or 17/04/2012'

/** A cell as an ISO date, or what is wrong with it. */
export function isoOf(
	text: string,
	on: string,
	order: DayOrder | undefined,
): { iso?: string; wrong?: WrongCell } {
	const given = text.trim()
	const written = writtenIn(given, on)
	if (written === undefined)
		return {
			wrong: {
				code: given === '' ? 'missing' : 'not-a-date',
				message: `${given === '' ? 'missing, given nothing' : `not a date, given "${given}"`}, allowed: ${allowed}`,
			},
		}
	const own = orderIn(written)
	if (own === 'either' && order === undefined)
		return {
			wrong: {
				code: 'day-or-month',
				message:
					`day and month cannot be told apart, given "${given}", allowed: what comes first in ` +
					'this list, or a date such as 17 April 2012',
			},
		}
	const iso = isoOfWritten(written, own === 'either' ? order : own)
	if (iso !== undefined) return { iso }
	return {
		wrong: {
			code: 'not-in-calendar',
			message: `not a date of the calendar, given "${given}", allowed: ${allowed}`,
		},
	}
}
