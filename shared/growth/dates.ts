/** Calendar arithmetic on ISO dates, in UTC so that no clock or time zone enters. */
const dayMs = 86400000
const utc = (date: string): number => {
	const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
	return Date.UTC(year, month - 1, day)
}
const iso = (ms: number): string => new Date(ms).toISOString().slice(0, 10)

/** Whole days from one ISO date to another; negative when `to` is earlier. */
export const daysBetween = (from: string, to: string): number => Math.round((utc(to) - utc(from)) / dayMs)
/** The ISO date `days` later. */
export const addDays = (date: string, days: number): string => iso(utc(date) + days * dayMs)
/** The same day `months` later; the last day of that month where it is shorter. */
export function addMonths(date: string, months: number): string {
	const [year = 0, month = 1, day = 1] = date.split('-').map(Number)
	const last = new Date(Date.UTC(year, month + months, 0)).getUTCDate()
	return iso(Date.UTC(year, month - 1 + months, Math.min(day, last)))
}
