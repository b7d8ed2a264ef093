/**
 * A chart as data: one description from which the screen, the PDF, the text alternative and the
 * table come.
 */
import type { Basis } from '../protocol/basis.ts'
import type { PrivateTopic } from '../words/sentence.ts'
import type { Statement } from '../words/statement.ts'

export interface Point {
	x: number
	y: number
}
/** Readings joined by a line. The marker and the dash tell series apart without colour. */
export interface Series {
	name: string
	marker: 'circle' | 'square'
	dashed: boolean
	points: readonly Point[]
}
/** A span of values along x, with an optional line through its middle. */
export interface Band {
	name: string
	points: readonly { x: number; low: number; high: number; middle?: number }[]
}
/** A reference curve, named at its right end. */
export interface Curve {
	name: string
	strong: boolean
	points: readonly Point[]
}
/** A horizontal line at y, with its words beside it. */
export interface Mark {
	words: readonly string[]
	y: number
}
export interface Panel {
	title?: string
	series: readonly Series[]
	bands: readonly Band[]
	curves: readonly Curve[]
	marks: readonly Mark[]
}
interface Axis {
	title: string
	/** Unit of the ticks; empty for dates. */
	unit: string
	/** Dates are day numbers since 1970-01-01. */
	kind: 'number' | 'date'
}
export interface Chart {
	id: string
	title: string
	/** The span of x that is drawn. */
	x: Axis & { min: number; max: number }
	/**
	 * `leastSpan`: the axis never shows less than this, so that reading noise does not look like a
	 * slope.
	 */
	y: Axis & { leastSpan: number }
	/** Side by side, on the same axes. */
	panels: readonly Panel[]
	/** Visits with a reading in the chart. */
	visits: number
	forecast: boolean
	/** Everything the picture says, with its numbers, for those who do not see it. */
	alternative: string
	/** The latest numbers in one sentence. */
	summary: string
	/** The same two as statements, for a reader with words of its own. */
	told?: readonly Statement[]
	latest?: readonly Statement[]
	/** What is nobody's business but the player's and the clinician's. */
	private?: PrivateTopic
	table: { head: readonly string[]; rows: readonly (readonly string[])[] }
	basis: readonly Basis[]
}
/** A chart earns its place on paper with two visits or a forecast. */
export const showsCourse = (chart: Chart): boolean => chart.visits >= 2 || chart.forecast
/** What a chart says: all of it, and the latest. */
export const toldBy = (
	told: readonly Statement[],
	latest: readonly Statement[],
): Pick<Chart, 'alternative' | 'summary' | 'told' | 'latest'> => ({
	alternative: told.map(({ says }) => says).join(' '),
	summary: latest.map(({ says }) => says).join(' '),
	told,
	latest,
})
