/**
 * What every chart over visits needs: the visits in order, a line a side, the words, and whether
 * the protocol at hand is the one that judged.
 */
import type { Assessment, PerSide } from '../findings/assessment.ts'
import { dayNumber } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { shown } from '../words/words.ts'
import type { Series } from './chart.ts'

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
/** Every date on which a side was measured, once, in order. */
export const datesOf = ({ left, right }: PerSide<readonly Reading[]>): string[] =>
	[...new Set([...left, ...right].map(({ date }) => date))].toSorted()
/** The readings of a side over the days: circles left, squares and dashes right. */
export const sideSeries = (side: Side, readings: readonly Reading[]): Series => ({
	name: side,
	marker: side === 'left' ? 'circle' : 'square',
	dashed: side === 'right',
	points: readings.map(({ date, value }) => ({ x: dayNumber(date), y: value })),
})
/**
 * Lines of thresholds are drawn only from the protocol that made the assessment; another would
 * contradict its words.
 */
export const judgedBy = (assessment: Assessment, protocol: Protocol): boolean =>
	assessment.protocol.id === protocol.file.id &&
	assessment.protocol.version === protocol.file.revision
/** A cell of the table: the reading of a day; 'not measured' where there is none. */
export function readingOn(readings: readonly Reading[], date: string): string {
	const found = readings.find((reading) => reading.date === date)
	return found ? shown(found.value) : 'not measured'
}
