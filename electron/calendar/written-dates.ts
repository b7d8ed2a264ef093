/** Days and times of day as lists write them. */
import { isoDateOf, twoDigits } from '../../shared/engine/plain/days.ts'

export type DateOrder = 'day-month' | 'month-day'
const numeric = /^(\d{1,2})[/.-](\d{1,2})[/.-](\d{2}|\d{4})$/
const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/
const named = /^(\d{1,2})\.?[ -]([a-z]{3})[a-z]*\.?,?[ -](\d{4})$/i
const weekday = /^(mon|tues?|wed(nes)?|thu(rs)?|fri|satur|sat|sun)(day)?,?\s+/i
const months = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec']

/** A date in numbers alone, whose day and month could be taken for each other. */
export const isNumericDate = (text: string): boolean => numeric.test(text)
/** Which comes first in a column of dates: decided by any number above 12, otherwise unknown. */
export function dateOrderOf(values: readonly string[]): DateOrder | 'unknown' | 'mixed' | 'plain' {
	const found = values
		.map((value) => numeric.exec(value.trim()))
		.filter((date) => date !== null)
		.map(([, first, second]) => ({ first, second }))
	if (found.length === 0) return 'plain'
	const dayFirst = found.some(({ first }) => Number(first) > 12)
	const monthFirst = found.some(({ second }) => Number(second) > 12)
	if (dayFirst && monthFirst) return 'mixed'
	if (dayFirst) return 'day-month'
	if (monthFirst) return 'month-day'
	return found.every(({ first, second }) => first === second) ? 'day-month' : 'unknown'
}
function fromIso(value: string): string | undefined {
	const [, year, month, day] = iso.exec(value) ?? []
	return isoDateOf(Number(year), Number(month), Number(day))
}
function fromNumbers(value: string, order: DateOrder): string | undefined {
	const [, first, second, written = ''] = numeric.exec(value) ?? []
	const year = Number(written) + (written.length === 2 ? 2000 : 0)
	return order === 'day-month'
		? isoDateOf(year, Number(second), Number(first))
		: isoDateOf(year, Number(first), Number(second))
}
function fromName(value: string): string | undefined {
	const [, day, month = '', year] = named.exec(value) ?? []
	return isoDateOf(Number(year), months.indexOf(month.toLowerCase()) + 1, Number(day))
}
/** The ISO date of a date as written; undefined where it is not understood. */
export function dateFrom(text: string, order: DateOrder): string | undefined {
	const value = text.trim().replace(weekday, '')
	if (iso.test(value)) return fromIso(value)
	return numeric.test(value) ? fromNumbers(value, order) : fromName(value)
}

const unset = /^t\.?b\.?[adc]\.?$/
const timeOfDay = /^(\d{1,2})(?:[:.h](\d{2}))?(?::\d{2})?\s*(am|pm|a\.m\.|p\.m\.)?$/
/** HH:MM from 24 h or AM/PM; undefined where unknown; 'unset' for TBA and blanks. */
export function timeFrom(text: string): string | 'unset' | undefined {
	const value = text.trim().toLowerCase()
	if (value === '' || unset.test(value)) return 'unset'
	const [, writtenHour, writtenMinute, half] = timeOfDay.exec(value) ?? []
	if (writtenHour === undefined) return undefined
	if (writtenMinute === undefined && half === undefined) return undefined
	const hour = half === undefined ? Number(writtenHour) : hourOfHalf(Number(writtenHour), half)
	const minute = Number(writtenMinute ?? 0)
	if (hour === undefined || hour > 23 || minute > 59) return undefined
	return `${twoDigits(hour)}:${twoDigits(minute)}`
}
/** 12 am is midnight, 12 pm noon. */
function hourOfHalf(hour: number, half: string): number | undefined {
	if (hour < 1 || hour > 12) return undefined
	return (hour % 12) + (half.startsWith('p') ? 12 : 0)
}
const minuteOfDay = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))
/** Minutes from one time of day to the next time it is the other. */
export const minutesBetween = (start: string, end: string): number =>
	(minuteOfDay(end) - minuteOfDay(start) + 1440) % 1440
