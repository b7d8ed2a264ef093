/** Dates for reading. */
import { dayInWords } from '../../shared/visit/age.ts'

export { dayInWords }

const two = (value: number) => String(value).padStart(2, '0')
/** An ISO moment as '25 November 2026, 14:05' in the zone of this PC; the same words on every screen. */
export function timeInWords(iso: string): string {
	const when = new Date(iso)
	return Number.isNaN(when.getTime()) ? iso : `${dayInWords(`${when.getFullYear()}-${two(when.getMonth() + 1)}-${two(when.getDate())}`)}, ${two(when.getHours())}:${two(when.getMinutes())}`
}
/** Today on this PC's calendar, YYYY-MM-DD. */
export function today(): string {
	const now = new Date()
	return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`
}
