/** The ISO 8601 week of a date. */
import { dateOfDay, dayNumber } from '../plain/days.ts'

/** 0 Monday to 6 Sunday; day 0, 1 January 1970, was a Thursday. */
export const weekdayOf = (day: number): number => (day + 3) % 7
/** ISO 8601 week: its number and its Monday. The week belongs to the year of its Thursday. */
export function isoWeek(iso: string): { week: number; monday: string } {
	const monday = dayNumber(iso) - weekdayOf(dayNumber(iso))
	const year = dateOfDay(monday + 3).slice(0, 4)
	const fourth = dayNumber(`${year}-01-04`)
	return {
		week: Math.round((monday - (fourth - weekdayOf(fourth))) / 7) + 1,
		monday: dateOfDay(monday),
	}
}
