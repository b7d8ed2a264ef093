/**
 * What every chart over visits needs: the visits in order, a line a side, the words, and whether
 * the protocol at hand is the one that judged.
 */
import type { KeptAssessment } from '../findings/assessment.ts'
import { dayNumber } from '../plain/days.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { NumberMeasure } from '../visit/measures/measure.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { shown } from '../words/words.ts'
import type { Series } from './chart.ts'

/** Of what is shown as it was recorded. */
export const asRecorded: Basis = {
	rule: 'as recorded at the visits',
	source: 'the visits themselves, no rule applied',
	strength: 'practice',
}
export interface Reading {
	/** ISO date of the visit. */
	date: string
	value: number
}

/** The earlier visits before this one, oldest first, then this one. */
export function inOrder(visit: Visit, earlier: readonly Visit[]): Visit[] {
	return [
		...earlier
			.filter((candidate) => candidate.visitDate < visit.visitDate)
			.toSorted((a, b) => (a.visitDate < b.visitDate ? -1 : 1)),
		visit,
	]
}
/** Every date on which there is a reading, once, in order. */
export const datesOf = (...lines: (readonly Reading[])[]): string[] =>
	[...new Set(lines.flat().map(({ date }) => date))].toSorted()
/** The least span of the axis that a measure is drawn on, in its unit. */
export const leastSpanOf = ({ trend }: NumberMeasure): number =>
	trend === 'none' ? 0 : trend.leastSpan
/** The readings of what has no side over the days. */
export const lineSeries = (name: string, readings: readonly Reading[]): Series => ({
	name,
	marker: 'circle',
	dashed: false,
	points: readings.map(({ date, value }) => ({ x: dayNumber(date), y: value })),
})
/** The readings of a side over the days: circles left, squares and dashes right. */
export const sideSeries = (side: Side, readings: readonly Reading[]): Series => ({
	...lineSeries(side, readings),
	marker: side === 'left' ? 'circle' : 'square',
	dashed: side === 'right',
})
/**
 * Lines of thresholds are drawn only from the protocol that made the assessment; another would
 * contradict its words.
 */
export const judgedBy = (assessment: KeptAssessment, protocol: Protocol): boolean =>
	assessment.protocol.id === protocol.file.id &&
	assessment.protocol.version === protocol.file.revision
/** A cell of the table: the reading of a day; 'not measured' where there is none. */
export function readingOn(readings: readonly Reading[], date: string): string {
	const found = readings.find((reading) => reading.date === date)
	return found ? shown(found.value) : 'not measured'
}
