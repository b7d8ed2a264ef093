/**
 * Draws a chart as SVG text: shapes and words only, so that the same string serves the screen and
 * the PDF.
 */
import type { Chart } from './chart.ts'
import { legend } from './drawing/legend.ts'
import { marginNames, marginWidth } from './drawing/margin-names.ts'
import { drawPanel } from './drawing/panel.ts'
import { type Box, lineHeight, quiet, short, text, widthOf } from './drawing/shapes.ts'
import { innerTicks, monthTicks, type Tick } from './scale.ts'

interface ChartLook {
	colour: string
	widthPt: number
	heightPt: number
}
/** Between two panels, points. */
const between = 14

/**
 * The chart as an SVG document, in points. Grey print keeps every difference: dashes, markers and
 * words.
 * @param look the clinic's colour and the size to draw for; words keep one size whatever the width
 */
export function chartSvg(chart: Chart, look: ChartLook): string {
	const { colour, widthPt, heightPt } = look
	const key = legend(chart, colour, widthPt)
	const plot = plotOf(chart, look, key.bottom)
	const atY = (value: number) =>
		plot.bottom - ((value - plot.low) / (plot.high - plot.low)) * (plot.bottom - plot.top)
	const xTicks = xTicksOf(chart, plot.panelWidth)
	const panels = chart.panels.flatMap((panel, index) => {
		const box = panelBox(plot, index)
		const drawn = drawPanel({
			panel,
			box,
			colour,
			atX: (value) => box.x + ((value - chart.x.min) / (chart.x.max - chart.x.min)) * box.width,
			atY,
			xTicks,
			yTicks: plot.yTicks,
			numbered: index === 0,
			widthPt,
		})
		return index === chart.panels.length - 1 ? [drawn, marginNames(panel, box, atY)] : [drawn]
	})
	const parts = [key.drawn, ...panels, ...xTitle(chart, look, plot)]
	return (
		`<svg xmlns="http://www.w3.org/2000/svg" width="${short(widthPt)}" ` +
		`height="${short(heightPt)}" ` +
		`viewBox="0 0 ${short(widthPt)} ${short(heightPt)}">${parts.join('')}</svg>`
	)
}

/** The room of the panels on the page (points), and the values at its foot and head. */
interface Plot {
	top: number
	bottom: number
	/** Left of the first panel, right of the last. */
	left: number
	right: number
	panelWidth: number
	low: number
	high: number
	yTicks: Tick[]
}
function plotOf(chart: Chart, { widthPt, heightPt }: ChartLook, legendBottom: number): Plot {
	const titled = chart.panels.some((panel) => panel.title)
	const top = legendBottom + (titled ? lineHeight + 6 : 7)
	const bottom = heightPt - (chart.x.title ? 26 : 15)
	const { low, high } = extentOf(chart)
	const yTicks = innerTicks(low, high, Math.max(2, Math.floor((bottom - top) / 15)))
	const left = Math.max(0, ...yTicks.map((tick) => widthOf(tick.label))) + 5
	const right = marginWidth(chart.panels)
	const { length: panels } = chart.panels
	const panelWidth = (widthPt - left - right - between * (panels - 1)) / panels
	return { top, bottom, left, right, panelWidth, low, high, yTicks }
}
/** The values that are shown: all that is drawn, at least the least span, and a little air. */
function extentOf({ panels, y: { leastSpan } }: Chart): { low: number; high: number } {
	const values = panels.flatMap((panel) => [
		...panel.series.flatMap((series) => series.points.map((point) => point.y)),
		...panel.bands.flatMap((band) => band.points.flatMap((point) => [point.low, point.high])),
		...panel.curves.flatMap((curve) => curve.points.map((point) => point.y)),
		...panel.marks.map((mark) => mark.y),
	])
	const min = Math.min(...values)
	const max = Math.max(...values)
	const lack = Math.max(0, leastSpan - (max - min))
	// a little air, so that no reading lies on the frame
	const air = Math.max(max - min, leastSpan) * 0.06
	return { low: min - lack / 2 - air, high: max + lack / 2 + air }
}
const panelBox = ({ left, top, bottom, panelWidth }: Plot, index: number): Box => ({
	x: left + index * (panelWidth + between),
	y: top,
	width: panelWidth,
	height: bottom - top,
})
/** As many ticks as their words have room for. */
const xTicksOf = ({ x: { kind, min, max } }: Chart, width: number): Tick[] =>
	kind === 'date'
		? monthTicks(min, max, Math.max(1, Math.floor(width / 56)))
		: innerTicks(min, max, Math.max(2, Math.floor(width / 34)))
function xTitle(
	{ x: { title, unit } }: Chart,
	{ widthPt, heightPt }: ChartLook,
	{ left, right }: Plot,
): string[] {
	if (!title) return []
	const middle = left + (widthPt - left - right) / 2
	const words = `${title}${unit ? ` (${unit})` : ''}`
	return [text([middle, heightPt - 3], words, { anchor: 'middle', colour: quiet })]
}
