/**
 * The day on this PC's calendar: the one place of shared/ that looks at the PC's time zone. Host
 * and screens call it; the engine gets its dates as words.
 */
import { format } from 'date-fns/format'
import { dayInWords } from '../../engine/plain/days.ts'

/**
 * @returns YYYY-MM-DD where the PC stands, which in the morning of the east is not yet the day of
 * UTC
 */
export const dayHere = (at: Date): string => format(at, 'yyyy-MM-dd')
/** @returns HH:MM where the PC stands */
export const clockHere = (at: Date): string => format(at, 'HH:mm')
/**
 * The day of an ISO moment where the PC stands, as '25 November 2026'; text that is no moment comes
 * back as it is.
 */
export function dayOfMoment(iso: string): string {
	const at = new Date(iso)
	return Number.isNaN(at.getTime()) ? iso : dayInWords(dayHere(at))
}
