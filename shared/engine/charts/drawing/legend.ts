/** The key over a chart: the axis it shows, then samples and names of what is drawn. */
import type { Band, Chart, Series } from '../chart.ts'
import { line, lineHeight, marker, type Place, short, strokeOf, text, widthOf } from './shapes.ts'

interface Entry {
	name: string
	/** The sample from its left end on. */
	sample(place: Place): string
}
/** Width of a sample, and of a sample with the room before its name (points). */
const sampleWidth = 20
const nameAt = 25

/** Flows over as many rows as it needs. @returns what is drawn, and where it ends */
export function legend(
	chart: Chart,
	colour: string,
	width: number,
): { drawn: string; bottom: number } {
	const axis = `${chart.y.title}${chart.y.unit ? ` (${chart.y.unit})` : ''}`
	const parts = [text([0, 9], axis, { bold: true })]
	let x = widthOf(axis, true) + 16
	let y = 9
	for (const { name, sample } of entriesOf(chart, colour)) {
		const room = nameAt + widthOf(name)
		if (x + room > width && x > 0) {
			x = 0
			y += lineHeight + 2
		}
		parts.push(sample([x, y - 3]), text([x + nameAt, y], name))
		x += room + 12
	}
	return { drawn: parts.join(''), bottom: y + 4 }
}
/** Each name once, in the order of the panels. */
function entriesOf(chart: Chart, colour: string): Entry[] {
	const entries = new Map<string, Entry>()
	for (const { title, series, bands } of chart.panels)
		for (const entry of [
			// a panel that names its only series in its title needs no sample of it
			...(title ? [] : series.map((shown) => seriesEntry(shown, colour))),
			...bands.map((band) => bandEntry(band, colour)),
		])
			if (!entries.has(entry.name)) entries.set(entry.name, entry)
	return [...entries.values()]
}
const seriesEntry = (series: Series, colour: string): Entry => ({
	name: series.name,
	sample: ([x, y]) =>
		line([x, y], [x + sampleWidth, y], strokeOf(series, colour)) +
		marker(series.marker, [x + sampleWidth / 2, y], colour),
})
const bandEntry = (band: Band, colour: string): Entry => ({
	name: band.name,
	sample: ([x, y]) => {
		const hasMiddle = band.points.some((point) => point.middle !== undefined)
		const middle = hasMiddle
			? line([x, y], [x + sampleWidth, y], { colour, width: 1.2, dash: '5 3' })
			: ''
		return (
			`<rect x="${short(x)}" y="${short(y - 4)}" width="${sampleWidth}" height="8" ` +
			`fill="${colour}" fill-opacity="0.15" stroke="${colour}" stroke-width="0.7" ` +
			`stroke-dasharray="1.5 1.5"/>${middle}`
		)
	},
})
