/** Calendar arithmetic on ISO dates, in UTC so that no clock or time zone enters. */
import { dayNumber } from '../visit/age.ts'

/** Whole days from one ISO date to another; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number => dayNumber(to) - dayNumber(from)
/** The same day `months` later; the last day of that month where it is shorter. */
export function addMonths(date: string, months: number): string {
	const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
	const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate()
	return new Date(Date.UTC(year, month - 1 + months, Math.min(day, last)))
		.toISOString()
		.slice(0, 10)
}
