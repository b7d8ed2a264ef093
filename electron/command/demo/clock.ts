/** The clocks of the demo: the one by which its past is entered, and the one it is opened with. */

const firstHour = 9
/** By then a screening day is half done. */
const lateMorning = 11
/** Between two entries of a day. */
const minutesBetween = 3
const minuteMs = 60_000
/** Where the PC stands, in ms. */
function momentOf(day: string, hour: number): number {
	const [year = 0, month = 1, date = 1] = day.split('-').map(Number)
	return new Date(year, month - 1, date, hour).getTime()
}

/** Never goes back, nor beyond now. */
export class PastClock {
	readonly #latest: number
	#at = 0
	/** @param latest now: nothing is entered later */
	constructor(latest: Date) {
		this.#latest = latest.getTime()
	}
	now = (): Date => new Date(this.#at)
	/**
	 * Goes to an ISO day where the PC stands: to its morning, or on where that is past. @returns whether a
	 * day began
	 */
	goTo(day: string): boolean {
		const morning = momentOf(day, firstHour)
		const begins = morning > this.#at
		this.#at = Math.min(this.#latest, Math.max(morning, this.#at + minutesBetween * minuteMs))
		return begins
	}
}
/**
 * A clock that begins in the morning of a day and runs on from there.
 * @param day ISO date; the PC's own clock where absent
 */
export function clockFrom(day: string | undefined): () => Date {
	if (day === undefined) return () => new Date()
	const began = Date.now()
	const morning = momentOf(day, lateMorning)
	return () => new Date(morning + Date.now() - began)
}
