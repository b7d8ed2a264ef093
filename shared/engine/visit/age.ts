/** Ages by the two conventions of the growth equations and of everyday speech. */

/** A number of one or two digits as two, such as the month of an ISO date. */
export const twoDigits = (value: number | string): string => String(value).padStart(2, '0')
/** Days from the epoch to an ISO date. */
export function dayNumber(isoDate: string): number {
	const [year, month, day] = isoDate.split('-').map(Number)
	return Date.UTC(year!, month! - 1, day!) / 86_400_000
}
/** The ISO date of a number of days from the epoch. */
export const dateOfDay = (day: number): string =>
	new Date(day * 86_400_000).toISOString().slice(0, 10)
/** The ISO date a number of days after another. */
export const addDays = (isoDate: string, days: number): string =>
	dateOfDay(dayNumber(isoDate) + Math.round(days))
/** Decimal age in years: days / 365.25 (the convention of the maturity equations). */
export function decimalAgeYears(birthDate: string, date: string): number {
	return (dayNumber(date) - dayNumber(birthDate)) / 365.25
}
/** Completed years, as a birthday counts them. */
export function ageYears(birthDate: string, date: string): number {
	const years = Number(date.slice(0, 4)) - Number(birthDate.slice(0, 4))
	return date.slice(5) < birthDate.slice(5) ? years - 1 : years
}

const months = [
	'January',
	'February',
	'March',
	'April',
	'May',
	'June',
	'July',
	'August',
	'September',
	'October',
	'November',
	'December',
]
/**
 * An ISO date (or the date part of an ISO time) as '8 November 1999', free of the order of figures.
 */
export function dayInWords(iso: string): string {
	const [year, month, day] = iso.slice(0, 10).split('-').map(Number)
	const name = months[(month ?? 0) - 1]
	return name ? `${day} ${name} ${year}` : iso
}
