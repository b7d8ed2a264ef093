/**
 * What every chart over visits needs: the visits in order, the words, and whether the protocol at
 * hand is the one that judged.
 */
import type { Assessment } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { dateWords } from '../words/words.ts'

/** The earlier visits before this one, oldest first, then this one. */
export function inOrder(visit: Visit, earlier: readonly Visit[]): Visit[] {
	return [
		...earlier
			.filter((one) => one.visitDate < visit.visitDate)
			.toSorted((a, b) => (a.visitDate < b.visitDate ? -1 : 1)),
		visit,
	]
}
/**
 * Lines of thresholds are drawn only from the protocol that made the assessment; another would
 * contradict its words.
 */
export const judgedBy = (assessment: Assessment, protocol: Protocol): boolean =>
	assessment.protocol.id === protocol.file.id &&
	assessment.protocol.version === protocol.file.revision
export const number = (value: number, digits = 1): string =>
	String(Math.round(value * 10 ** digits) / 10 ** digits)
/** '241 mm on 15 July 2026, 246.5 mm on 20 January 2027'; 'not measured' where there is none. */
export function readings(points: readonly { date: string; value: number }[], unit: string): string {
	return points.length === 0
		? 'not measured'
		: points.map(({ date, value }) => `${number(value)} ${unit} on ${dateWords(date)}`).join(', ')
}
/** A name in a margin: cut where it would take the room of the picture. */
export const short = (name: string, most = 18): string =>
	name.length <= most ? name : `${name.slice(0, most - 3).trimEnd()}...`
