/**
 * Dates of a roster, which are written in many ways. What comes first in 03/04/2012 is told by the
 * other rows of the file, or asked; it is never guessed.
 */
import { isoDateOf } from '../../engine/plain/days.ts'
import { monthOfWord } from '../../engine/plain/month-word.ts'

export const dayOrders = ['day-first', 'month-first'] as const
/** What comes first in a date of three figures. */
export type DayOrder = (typeof dayOrders)[number]

/** What is wrong with a cell: a code to go by, and the words. */
export interface WrongCell {
	code: string
	message: string
}
/** Year, month and day as they are written, or two figures of which either may be the day. */
type Written =
	| { year: number; month: number; day: number }
	| { year: number; first: number; second: number }

/** A month's number is never above it, a day's may be. */
const mostMonths = 12
/** A year of two figures is the last such year that is not still to come. */
function wholeYear(year: string, on: string): number {
	if (year.length > 2) return Number(year)
	const thisYear = Number(on.slice(0, 4))
	const century = Math.floor(thisYear / 100) * 100
	const near = century + Number(year)
	return near > thisYear ? near - 100 : near
}
type Read = (parts: readonly string[], on: string) => Written | undefined
const dayAndWord = (day = '', word = '', year = '', on: string): Written | undefined => {
	const month = monthOfWord(word)
	return month === undefined ? undefined : { year: wholeYear(year, on), month, day: Number(day) }
}
/** The ways in which lists write a day, with what each part is. */
const forms: readonly (readonly [form: RegExp, read: Read])[] = [
	[
		// 2012-04-17, also with the hour that a spreadsheet adds
		/^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ]\d{1,2}:\d{2}(?::\d{2}(?:\.\d+)?)?Z?)?$/,
		([year, month, day]) => ({ year: Number(year), month: Number(month), day: Number(day) }),
	],
	[
		// 17 April 2012, 17-Apr-12, 17th Apr. 2012
		/^(\d{1,2})(?:st|nd|rd|th)?[.\s-]+([a-z]{3,9})\.?,?[\s-]+(\d{4}|\d{2})$/i,
		([day, word, year], on) => dayAndWord(day, word, year, on),
	],
	[
		// April 17, 2012
		/^([a-z]{3,9})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4}|\d{2})$/i,
		([word, day, year], on) => dayAndWord(day, word, year, on),
	],
	[
		// 17.04.2012: with points the day comes first
		/^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})$/,
		([day, month, year = ''], on) => ({
			year: wholeYear(year, on),
			month: Number(month),
			day: Number(day),
		}),
	],
	[
		/^(\d{1,2})[/\s-](\d{1,2})[/\s-](\d{4}|\d{2})$/,
		([first, second, year = ''], on) => ({
			year: wholeYear(year, on),
			first: Number(first),
			second: Number(second),
		}),
	],
]
/** @param on the ISO date of the day, for years of two figures */
function writtenIn(text: string, on: string): Written | undefined {
	for (const [form, read] of forms) {
		const [, ...parts] = form.exec(text.trim()) ?? []
		if (parts.length > 0) return read(parts, on)
	}
	return undefined
}
/** What a date of two figures tells by itself: a figure above twelve is no month. */
function orderIn(written: Written | undefined): DayOrder | 'either' | undefined {
	if (written === undefined || !('first' in written)) return undefined
	const { first, second } = written
	if (first > mostMonths) return 'day-first'
	if (second > mostMonths) return 'month-first'
	return first === second ? undefined : 'either'
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
function isoOfWritten(written: Written, order: DayOrder | undefined): string | undefined {
	if (!('first' in written)) return isoDateOf(written.year, written.month, written.day)
	const { year, first, second } = written
	return order === 'month-first' ? isoDateOf(year, first, second) : isoDateOf(year, second, first)
}
