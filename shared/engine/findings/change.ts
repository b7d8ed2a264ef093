/**
 * Change of a measure since the last visit that has it: called real only from the published
 * smallest real change.
 */
import { dayInWords } from '../plain/days.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import type { Statement } from '../words/statement.ts'
import type { Change } from './assessment.ts'
import { reading } from './finding.ts'
import { equation, minus, quantity } from './formula.ts'

const examinerOf = (visit: Visit): string | undefined => visit.feet?.examiner?.trim().toLowerCase()
/** Whether two visits had the same examiner; unknown where either did not record one. */
export function examinersOf(visit: Visit, other: Visit): Change['examiners'] {
	const examiner = examinerOf(visit)
	const otherExaminer = examinerOf(other)
	if (!examiner || !otherExaminer) return 'unknown'
	return examiner === otherExaminer ? 'same' : 'different'
}
/**
 * The stance of the foot measures; standing is the protocol, so it stands where none was recorded.
 */
export const stanceOf = (visit: Visit): 'standing' | 'seated' => visit.feet?.stance ?? 'standing'

/** How much shorter a foot reads seated than standing, at most, mm. Xiong 2009 (n 30), derived. */
export const seatedShorterMm = 3
/** Either the threshold that a change must reach, or why the two visits cannot be compared. */
export type Limit = { key: ThresholdKey } | { why: Statement }

/** The latest visit before this one that has a measure, with the value it had. */
function latestBefore(
	visit: Visit,
	earlier: readonly Visit[],
	of: (visit: Visit) => number | undefined,
): { then: Visit; was: number } | undefined {
	return earlier
		.filter((candidate) => candidate.visitDate < visit.visitDate)
		.flatMap((then) => {
			const was = of(then)
			return was === undefined ? [] : [{ then, was }]
		})
		.reduce<{ then: Visit; was: number } | undefined>(
			(latest, found) =>
				latest === undefined || found.then.visitDate > latest.then.visitDate ? found : latest,
			undefined,
		)
}
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
	const found = latestBefore(visit, earlier, of)
	if (now === undefined || found === undefined) return undefined
	const { then, was } = found
	const examiners = examinersOf(visit, then)
	const limit = limitOf(then, examiners)
	// Rounded so that 4.0 mm, reached by subtraction, counts as 4.
	const base = { since: then.visitDate, was, now, change: rounded(now - was, 4), unit, examiners }
	if ('why' in limit) return { ...base, verdict: 'cannot-compare', why: limit.why.says }
	const smallestReal = protocol.value(limit.key)
	return {
		...base,
		smallestReal,
		verdict: Math.abs(base.change) >= smallestReal ? 'real' : 'within-error',
	}
}
/** The changes of one side, by measure; a measure without an earlier value is absent. */
export const changesBy = <Measure extends string>(
	measures: readonly Measure[],
	changeOf: (measure: Measure) => Change | undefined,
): Partial<Record<Measure, Change>> => {
	const changes: Partial<Record<Measure, Change>> = {}
	for (const measure of measures) {
		const change = changeOf(measure)
		if (change) changes[measure] = change
	}
	return changes
}
/** What a finding about a change rests on: the value now, the earlier one, and its day. */
export const changeReasons = (
	measure: string,
	{ now, was, since, unit }: Change,
	side: Side,
): Because[] => [
	reading(measure, now, unit, side),
	reading('atEarlierVisit', was, unit, side),
	{ measure: 'earlierVisit', value: since },
]
export const examinerWords: Record<Change['examiners'], string> = {
	same: 'same examiner',
	different: 'different examiner',
	unknown: 'examiner not recorded at both visits',
}
function verdictLine({ unit, examiners, smallestReal, verdict, why }: Change): string {
	if (verdict === 'cannot-compare') return `Cannot be compared: ${why}`
	const judged = verdict === 'real' ? 'a real change' : 'within error'
	return `Smallest real change ${smallestReal} ${unit} (${examinerWords[examiners]}): ${judged}`
}
/** The lines of a working about a change. */
export function changeLines(change: Change): string[] {
	const { now, was, unit, since } = change
	const difference = minus(quantity(now), quantity(was))
	return [`Since ${dayInWords(since)}: ${equation(difference, unit)}`, verdictLine(change)]
}
