/**
 * Days of the calendar, written YYYY-MM-DD: the one place that reckons with them. A day has no
 * hour and no zone, so nothing here asks where the PC stands; date-fns does the reckoning where a
 * month or a year is long or short, on its own date that answers in UTC: in the zone of a PC a day may be missing (Samoa had no 30 December
 * 2011).
 */
import { UTCDateMini } from '@date-fns/utc/date/mini'
import { addDays as daysLater } from 'date-fns/addDays'
import { addMonths as monthsLater } from 'date-fns/addMonths'
import { addYears as yearsLater } from 'date-fns/addYears'
import { millisecondsInDay } from 'date-fns/constants'
import { format } from 'date-fns/format'

/**
 * Milliseconds from 1 January 1970. A day past the end of its month runs on into the next one, as in
 * a calendar that is counted.
 */
function instantOf(iso: string): number {
	const [year = Number.NaN, month = Number.NaN, day = Number.NaN] = iso
		.slice(0, 10)
		.split('-')
		.map(Number)
	return Date.UTC(year, month - 1, day)
}
const dayAt = (iso: string): Date => new UTCDateMini(instantOf(iso))
const isoOf = (day: Date): string => day.toISOString().slice(0, 10)

/** A number of one or two digits as two, such as the month of an ISO date. */
export const twoDigits = (value: number | string): string => String(value).padStart(2, '0')
/** Days from 1 January 1970 to an ISO date. */
export const dayNumber = (isoDate: string): number => instantOf(isoDate) / millisecondsInDay
/** The ISO date of a number of days from 1 January 1970. */
export const dateOfDay = (day: number): string => isoOf(new Date(day * millisecondsInDay))
/** Whole days from one ISO date to another; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from)
/** The ISO date a number of days (rounded to whole ones) after another. */
export const addDays = (isoDate: string, days: number): string =>
	isoOf(daysLater(dayAt(isoDate), Math.round(days)))
/** The later of two days. */
export const laterDay = (one: string, other: string): string =>
	dayNumber(one) < dayNumber(other) ? other : one
/** The same day `months` later; the last day of that month where it is shorter. */
export const addMonths = (isoDate: string, months: number): string =>
	isoOf(monthsLater(dayAt(isoDate), months))
/** The same day `years` later; 29 February becomes 1 March where the year has none. */
export function addYears(isoDate: string, years: number): string {
	const from = dayAt(isoDate)
	const later = yearsLater(from, years)
	return isoOf(later.getDate() === from.getDate() ? later : daysLater(later, 1))
}
/** Completed years from one ISO date to another, as a birthday counts them; below 0 backwards. */
export function completedYears(from: string, to: string): number {
	// asked of every player many times a visit: without the dates that a longer way would make
	const [first, last] = [new Date(instantOf(from)), new Date(instantOf(to))]
	const years = last.getUTCFullYear() - first.getUTCFullYear()
	const months = last.getUTCMonth() - first.getUTCMonth()
	const days = last.getUTCDate() - first.getUTCDate()
	return months < 0 || (months === 0 && days < 0) ? years - 1 : years
}
/** The ISO date of a year, month (1 to 12) and day; undefined where the calendar has none. */
export function isoDateOf(year: number, month: number, day: number): string | undefined {
	const date = new UTCDateMini(Date.UTC(year, month - 1, day))
	const exists =
		date.getFullYear() === year && date.getMonth() === month - 1 && date.getDate() === day
	return exists ? isoOf(date) : undefined
}

/** The last day (28 to 31) of a month, 1 to 12. */
export const daysInMonth = (year: number, month: number): number =>
	new UTCDateMini(Date.UTC(year, month, 0)).getDate()
export const daysPerWeek = 7
/** Whether the calendar has the day of an ISO date: 2027-02-30 and 2011-31-31 are none. */
export function isDay(iso: string): boolean {
	const day = dayAt(iso)
	return !Number.isNaN(day.getTime()) && isoOf(day) === iso
}
const inWords = (iso: string, words: string): string =>
	isDay(iso.slice(0, 10)) ? format(dayAt(iso), words) : iso
/**
 * An ISO date (or the date part of an ISO time) as '8 November 1999', free of the order of figures;
 * text that is no date comes back as it is.
 */
export const dayInWords = (iso: string): string => inWords(iso, 'd MMMM y')
/** An ISO date as '8 Nov'; text that is no date comes back as it is. */
export const shortDayInWords = (iso: string): string => inWords(iso, 'd MMM')
/** An ISO date's month, such as 'November 1999'; text that is no date comes back as it is. */
export const monthInWords = (iso: string): string => inWords(iso, 'MMMM y')
/** An ISO date's day of the week, such as 'Tuesday'; text that is no date comes back as it is. */
export const weekdayName = (iso: string): string => inWords(iso, 'EEEE')
/** A month (1 to 12) as 'November'. */
export const monthName = (month: number): string =>
	format(new UTCDateMini(Date.UTC(2000, month - 1)), 'MMMM')
