/**
 * Change of a measure since the last visit that has it: called real only from the published
 * smallest real change.
 */

import { dayInWords } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import type { Change } from './assessment.ts'

/** Whether two visits had the same examiner; unknown where either did not record one. */
export function examinersOf(a: Visit, b: Visit): Change['examiners'] {
	const [one, other] = [a, b].map((visit) => visit.feet?.examiner?.trim().toLowerCase())
	return !one || !other ? 'unknown' : one === other ? 'same' : 'different'
}
/**
 * The stance of the foot measures; standing is the protocol, so it stands where none was recorded.
 */
export const stanceOf = (visit: Visit): 'standing' | 'seated' => visit.feet?.stance ?? 'standing'

/** Either the threshold that a change must reach, or why the two visits cannot be compared. */
export type Limit = { key: ThresholdKey } | { why: string }
/**
 * The change of one measure since the latest earlier visit that has it; undefined where there is
 * none. `unit` is the unit of the measure.
 */
export function changeSince(
	visit: Visit,
	earlier: readonly Visit[],
	of: (visit: Visit) => number | undefined,
	unit: string,
	limitOf: (then: Visit, examiners: Change['examiners']) => Limit,
	protocol: Protocol,
): Change | undefined {
	const now = of(visit)
	const then = earlier
		.filter((one) => one.visitDate < visit.visitDate && of(one) !== undefined)
		.reduce<Visit | undefined>(
			(latest, one) => (latest === undefined || one.visitDate > latest.visitDate ? one : latest),
			undefined,
		)
	if (now === undefined || then === undefined) return undefined
	const was = of(then)!,
		examiners = examinersOf(visit, then),
		limit = limitOf(then, examiners)
	// Rounded so that 4.0 mm, reached by subtraction, counts as 4.
	const base = { since: then.visitDate, was, now, change: rounded(now - was, 4), unit, examiners }
	if ('why' in limit) return { ...base, verdict: 'cannot-compare', why: limit.why }
	const smallestReal = protocol.value(limit.key)
	return {
		...base,
		smallestReal,
		verdict: Math.abs(base.change) >= smallestReal ? 'real' : 'within-error',
	}
}
export const examinerWords: Record<Change['examiners'], string> = {
	same: 'same examiner',
	different: 'different examiner',
	unknown: 'examiner not recorded at both visits',
}
/** The lines of a working about a change. */
export function changeLines({
	since,
	was,
	now,
	change,
	unit,
	examiners,
	smallestReal,
	verdict,
	why,
}: Change): string[] {
	const sum =
		`${rounded(now, 2)} now - ${rounded(was, 2)} on ${dayInWords(since)} = ` +
		`${rounded(change, 2)} ${unit}`
	return [
		sum,
		verdict === 'cannot-compare'
			? `Cannot be compared: ${why}`
			: `Smallest real change ${smallestReal} ${unit} (${examinerWords[examiners]}): ` +
				`${verdict === 'real' ? 'a real change' : 'within error'}`,
	]
}
