/** The bytes of a list as text. */

const [carriageReturn, lineFeed, space, tab] = [13, 10, 32, 9]
/**
 * Takes the folds of a calendar out: a fold may stand inside a character of several bytes (RFC
 * 5545, 3.1).
 */
export function unfolded(bytes: Uint8Array): Uint8Array {
	const out = new Uint8Array(bytes.length)
	let long = 0
	for (let at = 0; at < bytes.length; at++) {
		const end =
			bytes[at] === carriageReturn && bytes[at + 1] === lineFeed
				? at + 2
				: bytes[at] === lineFeed
					? at + 1
					: 0
		if (end > 0 && (bytes[end] === space || bytes[end] === tab)) {
			at = end
			continue
		}
		out[long++] = bytes[at]!
	}
	return out.subarray(0, long)
}
const beginning = 'BEGIN:VCALENDAR'
/** Whether the bytes begin as a calendar does, after a byte order mark or blank lines. */
export const isCalendarBytes = (bytes: Uint8Array): boolean =>
	String.fromCharCode(...bytes.subarray(0, 200))
		.toUpperCase()
		.includes(beginning)
