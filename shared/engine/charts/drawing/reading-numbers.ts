/** The number beside each reading, where it covers no reading, no line and no other number. */
import type { Point } from '../chart.ts'
import { type Box, fontSize, overlap, type Place, short, text, widthOf } from './shapes.ts'

interface PlacedReading {
	point: Point
	place: Place
}

/**
 * The newest readings get their numbers first; a number without room is left to the table.
 * @param box of the panel: no number leaves it
 * @param lines further places that must stay free
 */
export function readingNumbers(
	readings: readonly PlacedReading[],
	box: Box,
	lines: readonly Box[],
): string[] {
	const taken: Box[] = [
		...readings.map(({ place: [x, y] }) => ({ x: x - 3.5, y: y - 3.5, width: 7, height: 7 })),
		...lines,
	]
	const drawn: string[] = []
	for (const reading of readings.toSorted((a, b) => b.point.x - a.point.x)) {
		const label = String(Math.round(reading.point.y * 10) / 10)
		const free = placesFor(reading.place, label, readings)
			.map((place) => ({ ...place, x: place.x >= box.x ? place.x : box.x + 1 }))
			.find((place) => within(place, box) && !taken.some((other) => overlap(place, other)))
		if (!free) continue
		taken.push(free)
		drawn.push(numberAt(free, label))
	}
	return drawn
}
/**
 * Above or below the reading, then to its right, then to its left: the first with room is taken.
 */
function placesFor([x, y]: Place, label: string, readings: readonly PlacedReading[]): Box[] {
	const width = widthOf(label) + 2
	const height = fontSize + 1
	const above = y - 5 - height
	const below = y + 5
	const liesUnderAnother = readings.some(({ place }) => place[0] === x && place[1] < y)
	return [
		...(liesUnderAnother ? [below, above] : [above, below]).map((top) => ({
			x: x - width / 2,
			y: top,
			width,
			height,
		})),
		{ x: x + 6, y: y - height / 2, width, height },
		{ x: x - 6 - width, y: y - height / 2, width, height },
	]
}
const within = (place: Box, box: Box): boolean =>
	place.x + place.width <= box.x + box.width &&
	place.y >= box.y &&
	place.y + place.height <= box.y + box.height
const numberAt = ({ x, y, width, height }: Box, label: string): string =>
	`<rect x="${short(x)}" y="${short(y)}" width="${short(width)}" height="${short(height)}" ` +
	'fill="#ffffff" fill-opacity="0.8"/>' +
	text([x + width / 2, y + height - 2], label, { anchor: 'middle' })
