/**
 * Draws a chart as SVG text: shapes and words only, so that the same string serves the screen and
 * the PDF.
 */
import type { Chart, Panel, Point } from './chart.ts'
import { innerTicks, monthTicks, type Tick } from './scale.ts'

export interface ChartLook {
	colour: string
	widthPt: number
	heightPt: number
}
interface Box {
	x: number
	y: number
	w: number
	h: number
}
const ink = '#1d2726',
	quiet = '#4a5653',
	hair = '#d5dbd8'
const size = 8.5,
	lineHeight = 10.5
/**
 * Mean advance of the font, a little over, so that estimated words are never wider than their room.
 */
const widthOf = (words: string, bold = false): number => words.length * size * (bold ? 0.62 : 0.58)
const n = (value: number): string => String(Math.round(value * 100) / 100)
const escaped = (words: string): string =>
	words
		.replaceAll('&', '&amp;')
		.replaceAll('<', '&lt;')
		.replaceAll('>', '&gt;')
		.replaceAll('"', '&quot;')
const overlap = (a: Box, b: Box): boolean =>
	a.x < b.x + b.w && b.x < a.x + a.w && a.y < b.y + b.h && b.y < a.y + a.h

function text(
	x: number,
	y: number,
	words: string,
	anchor: 'start' | 'middle' | 'end' = 'start',
	colour = ink,
	bold = false,
): string {
	return (
		`<text x="${n(x)}" y="${n(y)}" font-family="Noto" ` +
		`font-size="${size}"${bold ? ' font-weight="700"' : ''} text-anchor="${anchor}" ` +
		`fill="${colour}">${escaped(words)}</text>`
	)
}
const line = (
	x1: number,
	y1: number,
	x2: number,
	y2: number,
	stroke: string,
	width: number,
	dash = '',
): string =>
	`<line x1="${n(x1)}" y1="${n(y1)}" x2="${n(x2)}" y2="${n(y2)}" stroke="${stroke}" ` +
	`stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`
const path = (
	points: readonly [number, number][],
	stroke: string,
	width: number,
	dash = '',
): string =>
	'<path ' +
	`d="${points.map(([x, y], index) => `${index === 0 ? 'M' : 'L'} ${n(x)} ${n(y)}`).join(' ')}" ` +
	`fill="none" stroke="${stroke}" ` +
	`stroke-width="${width}"${dash ? ` stroke-dasharray="${dash}"` : ''}/>`
function marker(kind: 'circle' | 'square', x: number, y: number, colour: string): string {
	return kind === 'circle'
		? `<circle cx="${n(x)}" cy="${n(y)}" r="3.2" fill="${colour}" stroke="#ffffff" ` +
				'stroke-width="0.8"/>'
		: `<rect x="${n(x - 2.9)}" y="${n(y - 2.9)}" width="5.8" height="5.8" fill="#ffffff" ` +
				`stroke="${ink}" stroke-width="1.4"/>`
}
/** Moves label centres apart to `gap`, in order, within top and bottom as far as there is room. */
function spread(
	wanted: readonly { y: number; h: number }[],
	top: number,
	bottom: number,
): number[] {
	const placed = wanted.map((one) => one.y)
	for (let i = 0; i < placed.length; i++)
		placed[i] = Math.max(
			placed[i]!,
			i === 0 ? top + wanted[0]!.h / 2 : placed[i - 1]! + (wanted[i - 1]!.h + wanted[i]!.h) / 2,
		)
	for (let i = placed.length - 1; i >= 0; i--)
		placed[i] = Math.min(
			placed[i]!,
			i === placed.length - 1
				? bottom - wanted[i]!.h / 2
				: placed[i + 1]! - (wanted[i]!.h + wanted[i + 1]!.h) / 2,
		)
	return placed
}
/** Samples and names of what is drawn, flowing over as many rows as they need. */
function legend(chart: Chart, colour: string, width: number): { drawn: string; bottom: number } {
	const items: { name: string; sample: (x: number, y: number) => string }[] = []
	const once = (name: string, sample: (x: number, y: number) => string) => {
		if (!items.some((item) => item.name === name)) items.push({ name, sample })
	}
	for (const panel of chart.panels) {
		// a panel that names its only series in its title needs no sample of it
		if (!panel.title)
			for (const series of panel.series)
				once(
					series.name,
					(x, y) =>
						line(
							x,
							y,
							x + 20,
							y,
							series.marker === 'circle' ? colour : ink,
							1.5,
							series.dashed ? '4 2.5' : '',
						) + marker(series.marker, x + 10, y, colour),
				)
		for (const band of panel.bands)
			once(
				band.name,
				(x, y) =>
					`<rect x="${n(x)}" y="${n(y - 4)}" width="20" height="8" fill="${colour}" ` +
					`fill-opacity="0.15" stroke="${colour}" stroke-width="0.7" stroke-dasharray="1.5 ` +
					`1.5"/>${band.points.some((point) => point.middle !== undefined) ? line(x, y, x + 20, y, colour, 1.2, '5 3') : ''}`,
			)
	}
	const axis = `${chart.y.title}${chart.y.unit ? ` (${chart.y.unit})` : ''}`
	const parts = [text(0, 9, axis, 'start', ink, true)]
	let x = widthOf(axis, true) + 16,
		y = 9
	for (const { name, sample } of items) {
		const need = 25 + widthOf(name)
		if (x + need > width && x > 0) {
			x = 0
			y += lineHeight + 2
		}
		parts.push(sample(x, y - 3), text(x + 25, y, name))
		x += need + 12
	}
	return { drawn: parts.join(''), bottom: y + 4 }
}
function extent(chart: Chart): { min: number; max: number } {
	const values = chart.panels.flatMap((panel) => [
		...panel.series.flatMap((series) => series.points.map((point) => point.y)),
		...panel.bands.flatMap((band) => band.points.flatMap((point) => [point.low, point.high])),
		...panel.curves.flatMap((curve) => curve.points.map((point) => point.y)),
		...panel.marks.map((mark) => mark.y),
	])
	const min = Math.min(...values),
		max = Math.max(...values)
	const lack = Math.max(0, chart.y.leastSpan - (max - min))
	// a little air, so that no reading lies on the frame
	const air = Math.max(max - min, chart.y.leastSpan) * 0.06
	return { min: min - lack / 2 - air, max: max + lack / 2 + air }
}

/**
 * The chart as an SVG document, in points. Grey print keeps every difference: dashes, markers and
 * words.
 * @param look the clinic's colour and the size to draw for; words keep one size whatever the width
 */
export function chartSvg(chart: Chart, { colour, widthPt, heightPt }: ChartLook): string {
	const key = legend(chart, colour, widthPt)
	const titled = chart.panels.some((panel) => panel.title)
	const top = key.bottom + (titled ? lineHeight + 6 : 7)
	const bottom = heightPt - (chart.x.title ? 26 : 15)
	const { min: low, max: high } = extent(chart)
	const yTicks = innerTicks(low, high, Math.max(2, Math.floor((bottom - top) / 15)))
	const left = Math.max(0, ...yTicks.map((yTick) => widthOf(yTick.label))) + 5
	const aside = chart.panels.flatMap((panel) => [
		...panel.curves.map((curve) => widthOf(curve.name)),
		...panel.marks.flatMap((mark) => mark.words.map((words) => widthOf(words))),
	])
	const right = aside.length === 0 ? 8 : Math.max(...aside) + 12
	const between = 14
	const each = (widthPt - left - right - between * (chart.panels.length - 1)) / chart.panels.length
	const xTicks: Tick[] =
		chart.x.kind === 'date'
			? monthTicks(chart.x.min, chart.x.max, Math.max(1, Math.floor(each / 56)))
			: innerTicks(chart.x.min, chart.x.max, Math.max(2, Math.floor(each / 34)))
	const atY = (value: number) => bottom - ((value - low) / (high - low)) * (bottom - top)
	const parts: string[] = [key.drawn]
	for (const [index, panel] of chart.panels.entries()) {
		const box: Box = { x: left + index * (each + between), y: top, w: each, h: bottom - top }
		parts.push(
			drawPanel(panel, box, {
				colour,
				atX: (value) => box.x + ((value - chart.x.min) / (chart.x.max - chart.x.min)) * box.w,
				atY,
				xTicks,
				yTicks,
				numbered: index === 0,
				widthPt,
			}),
		)
		if (index === chart.panels.length - 1) parts.push(sideWords(panel, box, atY))
	}
	if (chart.x.title)
		parts.push(
			text(
				left + (widthPt - left - right) / 2,
				heightPt - 3,
				`${chart.x.title}${chart.x.unit ? ` (${chart.x.unit})` : ''}`,
				'middle',
				quiet,
			),
		)
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" width="${n(widthPt)}" height="${n(heightPt)}" ` +
		`viewBox="0 0 ${n(widthPt)} ${n(heightPt)}">${parts.join('')}</svg>`
	)
}
interface Drawing {
	colour: string
	atX: (value: number) => number
	atY: (value: number) => number
	xTicks: readonly Tick[]
	yTicks: readonly Tick[]
	numbered: boolean
	widthPt: number
}

function drawPanel(
	panel: Panel,
	box: Box,
	{ colour, atX, atY, xTicks, yTicks, numbered, widthPt }: Drawing,
): string {
	const parts: string[] = []
	const bottom = box.y + box.h,
		end = box.x + box.w
	const at = ({ x, y }: Point): [number, number] => [atX(x), atY(y)]
	if (panel.title) parts.push(text(box.x, box.y - 6, panel.title, 'start', ink, true))
	for (const yTick of yTicks) {
		parts.push(line(box.x, atY(yTick.at), end, atY(yTick.at), hair, 0.6))
		if (numbered) parts.push(text(box.x - 4, atY(yTick.at) + 3, yTick.label, 'end', quiet))
	}
	parts.push(line(box.x, bottom, end, bottom, quiet, 0.8))
	for (const xTick of xTicks) {
		const half = widthOf(xTick.label) / 2
		parts.push(
			line(atX(xTick.at), bottom, atX(xTick.at), bottom + 3, quiet, 0.8),
			text(
				Math.min(Math.max(atX(xTick.at), box.x - 5 + half, half), end + 5 - half, widthPt - half),
				bottom + 12,
				xTick.label,
				'middle',
				quiet,
			),
		)
	}
	for (const band of panel.bands) {
		const upper = band.points.map(({ x, high: y }) => at({ x, y })),
			lower = band.points.map(({ x, low: y }) => at({ x, y }))
		parts.push(
			'<path ' +
				`d="${[...upper, ...lower.toReversed()].map(([x, y], index) => `${index === 0 ? 'M' : 'L'} ${n(x)} ${n(y)}`).join(' ')} ` +
				`Z" fill="${colour}" fill-opacity="0.15"/>`,
			path(upper, colour, 0.7, '1.5 1.5'),
			path(lower, colour, 0.7, '1.5 1.5'),
		)
		const middle = band.points.flatMap(({ x, middle: y }) =>
			y === undefined ? [] : [at({ x, y })],
		)
		if (middle.length > 1) parts.push(path(middle, colour, 1.2, '5 3'))
	}
	for (const curve of panel.curves)
		parts.push(path(curve.points.map(at), quiet, curve.strong ? 1.3 : 0.6))
	for (const mark of panel.marks)
		parts.push(line(box.x, atY(mark.y), end, atY(mark.y), ink, 1, '8 3 2 3'))
	const points = panel.series.flatMap((series) =>
		series.points.map((point) => ({ point, series: series, x: atX(point.x), y: atY(point.y) })),
	)
	const taken: Box[] = points.map(({ x, y }) => ({ x: x - 3.5, y: y - 3.5, w: 7, h: 7 }))
	taken.push(...panel.marks.map((mark) => ({ x: box.x, y: atY(mark.y) - 0.5, w: box.w, h: 1 })))
	for (const series of panel.series)
		parts.push(
			path(
				series.points.map(at),
				series.marker === 'circle' ? colour : ink,
				1.5,
				series.dashed ? '4 2.5' : '',
			),
		)
	// the newest readings get their numbers first; a number without room is left to the table
	for (const { point, x, y } of points.toSorted((a, b) => b.point.x - a.point.x)) {
		const label = String(Math.round(point.y * 10) / 10),
			w = widthOf(label) + 2,
			h = size + 1
		const under = points.some((other) => other.x === x && other.y < y)
		const centred = [y - 5 - h, y + 5],
			places: Box[] = [
				...(under ? centred.toReversed() : centred).map((top) => ({ x: x - w / 2, y: top, w, h })),
				{ x: x + 6, y: y - h / 2, w, h },
				{ x: x - 6 - w, y: y - h / 2, w, h },
			]
		const place = places
			.map((one) => ({ ...one, x: one.x >= box.x ? one.x : box.x + 1 }))
			.find(
				(one) =>
					one.x + one.w <= end &&
					one.y >= box.y &&
					one.y + one.h <= bottom &&
					!taken.some((other) => overlap(one, other)),
			)
		if (!place) continue
		taken.push(place)
		parts.push(
			`<rect x="${n(place.x)}" y="${n(place.y)}" width="${n(w)}" height="${n(h)}" ` +
				'fill="#ffffff" fill-opacity="0.8"/>',
			text(place.x + w / 2, place.y + h - 2, label, 'middle'),
		)
	}
	for (const { series, x, y } of points) parts.push(marker(series.marker, x, y, colour))
	return parts.join('')
}
/** The names of curves and marks in the right margin, moved apart where they would touch. */
function sideWords(panel: Panel, box: Box, atY: (value: number) => number): string {
	const named = [
		...panel.curves.map((curve) => ({
			words: [curve.name] as readonly string[],
			y: curve.points.at(-1)!.y,
		})),
		...panel.marks,
	]
		.map(({ words, y }) => ({
			words,
			y: atY(y),
			h: words.length * lineHeight + (words.length > 1 ? 4 : 0),
		}))
		.toSorted((a, b) => a.y - b.y)
	const centres = spread(named, box.y - 4, box.y + box.h + 12)
	return named
		.map(({ words, y }, index) => {
			const start = box.x + box.w
			return (
				line(start, y, start + 8, centres[index]!, quiet, 0.6) +
				words
					.map((word, row) =>
						text(
							start + 10,
							centres[index]! - (words.length * lineHeight) / 2 + (row + 1) * lineHeight - 2.6,
							word,
						),
					)
					.join('')
			)
		})
		.join('')
}
