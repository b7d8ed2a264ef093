/** Dates for reading. */
import { clockHere, dayHere, dayOfMoment } from '../../shared/desk/workplace/local-day.ts'
import { dayInWords } from '../../shared/engine/plain/days.ts'

export { dayInWords, dayOfMoment }

/**
 * An ISO moment as '25 November 2026, 14:05' in the zone of this PC; the same words on every
 * screen.
 */
export function timeInWords(iso: string): string {
	const when = new Date(iso)
	return Number.isNaN(when.getTime()) ? iso : `${dayOfMoment(iso)}, ${clockHere(when)}`
}
/** Today on this PC's calendar, YYYY-MM-DD. */
export const today = (): string => dayHere(new Date())
