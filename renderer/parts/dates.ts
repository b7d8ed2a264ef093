/** Dates for reading. */
export { dayInWords } from '../../shared/visit/age.ts'

/** Today on this PC's calendar, YYYY-MM-DD. */
export function today(): string {
	const now = new Date()
	return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`
}
