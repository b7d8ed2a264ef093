/** The bytes of a list as text. */

const [carriageReturn, lineFeed, space, tab] = [13, 10, 32, 9]
/** How many bytes a line break takes at a place: 0 where there is none. */
function breakLength(bytes: Uint8Array, place: number): number {
	if (bytes[place] === lineFeed) return 1
	return bytes[place] === carriageReturn && bytes[place + 1] === lineFeed ? 2 : 0
}
/**
 * Takes the folds of a calendar out: a fold may stand inside a character of several bytes (RFC
 * 5545, 3.1).
 */
export function unfolded(bytes: Uint8Array): Uint8Array {
	const out = new Uint8Array(bytes.length)
	let length = 0
	let foldEnds = 0
	for (const [place, byte] of bytes.entries()) {
		if (place < foldEnds) continue
		const width = breakLength(bytes, place)
		const next = bytes[place + width]
		if (width > 0 && (next === space || next === tab)) {
			foldEnds = place + width + 1
			continue
		}
		out[length++] = byte
	}
	return out.subarray(0, length)
}
const beginning = 'BEGIN:VCALENDAR'
/** Whether the bytes begin as a calendar does, after a byte order mark or blank lines. */
export const isCalendarBytes = (bytes: Uint8Array): boolean =>
	String.fromCharCode(...bytes.subarray(0, 200))
		.toUpperCase()
		.includes(beginning)
