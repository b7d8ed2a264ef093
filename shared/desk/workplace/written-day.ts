/** Days as people and their lists write them, which can be read two ways. */
import { isoDateOf } from '../../engine/plain/days.ts'
import { monthOfWord } from '../../engine/plain/month-word.ts'

export const dayOrders = ['day-first', 'month-first'] as const
/** What comes first in a date of three figures. */
export type DayOrder = (typeof dayOrders)[number]

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
export function writtenIn(text: string, on: string): Written | undefined {
	for (const [form, read] of forms) {
		const [, ...parts] = form.exec(text.trim()) ?? []
		if (parts.length > 0) return read(parts, on)
	}
	return undefined
}
/** What a date of two figures tells by itself: a figure above twelve is no month. */
export function orderIn(written: Written | undefined): DayOrder | 'either' | undefined {
	if (written === undefined || !('first' in written)) return undefined
	const { first, second } = written
	if (first > mostMonths) return 'day-first'
	if (second > mostMonths) return 'month-first'
	return first === second ? undefined : 'either'
}
/** The ISO date; undefined where the calendar has none. */
export function isoOfWritten(written: Written, order: DayOrder | undefined): string | undefined {
	if (!('first' in written)) return isoDateOf(written.year, written.month, written.day)
	const { year, first, second } = written
	return order === 'month-first' ? isoDateOf(year, first, second) : isoDateOf(year, second, first)
}
/** Every ISO date that a text can be read as; none where it is no date. */
export function daysMeant(text: string, on: string): string[] {
	const written = writtenIn(text, on)
	if (written === undefined) return []
	const own = orderIn(written)
	const days = (own === 'either' ? dayOrders : [own]).map((order) => isoOfWritten(written, order))
	return [...new Set(days)].filter((day) => day !== undefined)
}
