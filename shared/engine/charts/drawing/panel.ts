/** One panel of a chart: its grid, what it compares with, its readings and their numbers. */
import type { Band, Panel, Point } from '../chart.ts'
import type { Tick } from '../scale.ts'
import { readingNumbers } from './reading-numbers.ts'
import {
	area,
	type Box,
	hair,
	ink,
	line,
	marker,
	type Place,
	path,
	quiet,
	strokeOf,
	text,
	widthOf,
} from './shapes.ts'

interface PanelDrawing {
	panel: Panel
	box: Box
	colour: string
	/** From a value of the axis to a place on the page (points). */
	atX(value: number): number
	atY(value: number): number
	xTicks: readonly Tick[]
	yTicks: readonly Tick[]
	/** Whether the numbers of the y axis stand beside it. */
	numbered: boolean
	/** Of the whole chart: words stay on it. */
	widthPt: number
}

/** What is drawn later lies over what is drawn before. */
export const drawPanel = (drawing: PanelDrawing): string =>
	[
		...title(drawing),
		...valueGrid(drawing),
		...baseline(drawing),
		...drawing.panel.bands.flatMap((band) => drawBand(band, drawing)),
		...curves(drawing),
		...marks(drawing),
		...seriesLines(drawing),
		...readings(drawing),
	].join('')

const endOf = ({ x, width }: Box): number => x + width
const bottomOf = ({ y, height }: Box): number => y + height
const placeOf = ({ x, y }: Point, { atX, atY }: PanelDrawing): Place => [atX(x), atY(y)]

const title = ({ panel, box }: PanelDrawing): string[] =>
	panel.title ? [text([box.x, box.y - 6], panel.title, { bold: true })] : []
const valueGrid = ({ box, atY, yTicks, numbered }: PanelDrawing): string[] =>
	yTicks.flatMap(({ at, label }) => {
		const y = atY(at)
		return [
			line([box.x, y], [endOf(box), y], { colour: hair, width: 0.6 }),
			...(numbered ? [text([box.x - 4, y + 3], label, { anchor: 'end', colour: quiet })] : []),
		]
	})
function baseline({ box, atX, xTicks, widthPt }: PanelDrawing): string[] {
	const bottom = bottomOf(box)
	const end = endOf(box)
	const stroke = { colour: quiet, width: 0.8 }
	return [
		line([box.x, bottom], [end, bottom], stroke),
		...xTicks.flatMap(({ at, label }) => {
			const x = atX(at)
			const half = widthOf(label) / 2
			const middle = Math.min(Math.max(x, box.x - 5 + half, half), end + 5 - half, widthPt - half)
			return [
				line([x, bottom], [x, bottom + 3], stroke),
				text([middle, bottom + 12], label, { anchor: 'middle', colour: quiet }),
			]
		}),
	]
}
function drawBand(band: Band, drawing: PanelDrawing): string[] {
	const { colour } = drawing
	const upper = band.points.map(({ x, high }) => placeOf({ x, y: high }, drawing))
	const lower = band.points.map(({ x, low }) => placeOf({ x, y: low }, drawing))
	const middle = band.points.flatMap(({ x, middle: y }) =>
		y === undefined ? [] : [placeOf({ x, y }, drawing)],
	)
	const edge = { colour, width: 0.7, dash: '1.5 1.5' }
	return [
		area([...upper, ...lower.toReversed()], colour),
		path(upper, edge),
		path(lower, edge),
		...(middle.length > 1 ? [path(middle, { colour, width: 1.2, dash: '5 3' })] : []),
	]
}
const curves = (drawing: PanelDrawing): string[] =>
	drawing.panel.curves.map(({ points, strong }) =>
		path(
			points.map((point) => placeOf(point, drawing)),
			{ colour: quiet, width: strong ? 1.3 : 0.6 },
		),
	)
const marks = ({ panel, box, atY }: PanelDrawing): string[] =>
	panel.marks.map((mark) =>
		line([box.x, atY(mark.y)], [endOf(box), atY(mark.y)], {
			colour: ink,
			width: 1,
			dash: '8 3 2 3',
		}),
	)
const seriesLines = (drawing: PanelDrawing): string[] =>
	drawing.panel.series.map((series) =>
		path(
			series.points.map((point) => placeOf(point, drawing)),
			strokeOf(series, drawing.colour),
		),
	)
function readings(drawing: PanelDrawing): string[] {
	const { panel, box, atY, colour } = drawing
	const placed = panel.series.flatMap((series) =>
		series.points.map((point) => ({ series, point, place: placeOf(point, drawing) })),
	)
	const markLines = panel.marks.map(
		(mark): Box => ({ x: box.x, y: atY(mark.y) - 0.5, width: box.width, height: 1 }),
	)
	return [
		...readingNumbers(placed, box, markLines),
		...placed.map(({ series, place }) => marker(series.marker, place, colour)),
	]
}
