/** Dates for reading. */
const months = ['January', 'February', 'March', 'April', 'May', 'June', 'July', 'August', 'September', 'October', 'November', 'December']
/** An ISO date (or the date part of an ISO time) as `8 November 1999`, free of the order of figures. */
export function dayInWords(iso: string): string {
	const [year, month, day] = iso.slice(0, 10).split('-').map(Number)
	const name = months[(month ?? 0) - 1]
	return name ? `${day} ${name} ${year}` : iso
}
/** Today on this PC's calendar, YYYY-MM-DD. */
export function today(): string {
	const now = new Date()
	return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`
}
