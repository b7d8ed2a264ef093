/** When the player is seen again: the earliest day that any part of the plan asks for. */
import type { Gate, GrowthResult, Kept, Prescription, ReviewAsked } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Action } from '../findings/screening-result.ts'
import { addDays, dayNumber, daysPerWeek, laterDay } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { mostUrgent } from './urgency.ts'

/** What a review is worked out from. */
export interface Reviewed extends Pick<Prescription, 'gate' | 'raise' | 'insert' | 'owned'> {
	growth: GrowthResult | undefined
	findings: readonly Finding[]
	visitDate: string
}
type Asked = Omit<ReviewAsked, 'by'>
const daysAfter: Readonly<Partial<Record<Action, ThresholdKey>>> = {
	imaging: 'prescription.imagingReviewDays',
	letter: 'prescription.letterReviewDays',
}
/** Monday to Friday; 1 January 1970 was a Thursday. */
const isWorkingDay = (iso: string): boolean => {
	const weekday = (((dayNumber(iso) + 3) % 7) + 7) % 7
	return weekday < 5
}
/** The day after a number of working days; holidays are the clinic's own and not known. */
export function addWorkingDays(iso: string, days: number): string {
	let day = iso
	for (let left = Math.max(1, Math.round(days)); left > 0; ) {
		day = addDays(day, 1)
		if (isWorkingDay(day)) left -= 1
	}
	return day
}
function afterGate({ gate, visitDate }: Reviewed, protocol: Protocol): Asked[] {
	const parts = [gate.person, gate.left, gate.right]
	const action = mostUrgent(parts.map((part) => part.action))
	if (action === 'proceed')
		return parts.some(({ holds }) => holds.length > 0)
			? [
					{
						date: addDays(visitDate, protocol.value('prescription.heldReviewDays')),
						because: becauseOf(gate),
					},
				]
			: []
	const key = daysAfter[action]
	const date = key
		? addDays(visitDate, protocol.value(key))
		: addWorkingDays(visitDate, protocol.value('prescription.urgentReviewDays'))
	return [{ date, because: becauseOf(gate) }]
}
/** What was told about a sign sets its own day, in days or in weeks. */
const ownReview: readonly (readonly [code: string, key: ThresholdKey, days: number])[] = [
	['screening.bone-stress-low', 'screening.boneStressReviewWeeks', daysPerWeek],
	['screening.boneStressLowRisk', 'screening.boneStressReviewWeeks', daysPerWeek],
	['screening.ottawa-not-met-minor', 'screening.ottawaAgainToDays', 1],
	['screening.ottawa-not-met-adult', 'screening.ottawaAgainToDays', 1],
]
const afterSigns = ({ findings, visitDate }: Reviewed, protocol: Protocol): Asked[] =>
	ownReview.flatMap(([told, key, days]) => {
		const because = findings.filter(({ code }) => code === told).map(({ id }) => id)
		if (because.length === 0) return []
		return [{ date: addDays(visitDate, protocol.value(key) * days), because }]
	})
/** Findings behind the gate, each once. */
export const becauseOf = ({ person, left, right }: Gate): string[] => [
	...new Set([person, left, right].flatMap(({ because }) => because)),
]
const idsOf = (findings: readonly Finding[], beginning: string): string[] =>
	findings.filter(({ code }) => code.startsWith(beginning)).map(({ id }) => id)
function afterGrowth({ growth, findings }: Reviewed): Asked[] {
	const date = growth?.measureAgainBy
	return date === undefined ? [] : [{ date, because: idsOf(findings, 'growth.foot-') }]
}
function afterRaise({ raise, visitDate, findings }: Reviewed, protocol: Protocol): Asked[] {
	if (!raise.pairs.some(({ left, right }) => left.addMm > 0 || right.addMm > 0)) return []
	const weeks = protocol.value('raise.reviewWeeks')
	return [{ date: addDays(visitDate, weeks * 7), because: idsOf(findings, 'raise.') }]
}
function afterInsert({ insert, visitDate, findings }: Reviewed, protocol: Protocol): Asked[] {
	if (insert.left.state !== 'proposed' && insert.right.state !== 'proposed') return []
	const weeks = protocol.value('prescription.insertReviewWeeks')
	return [{ date: addDays(visitDate, weeks * 7), because: idsOf(findings, 'insert.') }]
}
const afterPairs = ({ owned }: { owned: Kept<Reviewed['owned']> }): Asked[] =>
	owned.flatMap(({ by, because }) => (by === undefined ? [] : [{ date: by, because }]))

/** The days that the parts of the plan ask for; none before the next one: the player stands here. */
export function reviewsAsked(from: Reviewed, protocol: Protocol): ReviewAsked[] {
	const asked: Readonly<Record<ReviewAsked['by'], readonly Asked[]>> = {
		gate: afterGate(from, protocol),
		signs: afterSigns(from, protocol),
		growth: afterGrowth(from),
		raise: afterRaise(from, protocol),
		insert: afterInsert(from, protocol),
		owned: afterPairs(from),
	}
	return (Object.keys(asked) as ReviewAsked['by'][]).flatMap((by) =>
		asked[by].map(({ date, because }) => ({ by, date: afterToday(date, from), because })),
	)
}
const afterToday = (date: string, { visitDate }: Pick<Reviewed, 'visitDate'>): string =>
	laterDay(date, addDays(visitDate, 1))
/** The earliest day. */
export function earliestReview(asked: readonly ReviewAsked[]): Prescription['review'] {
	const first = asked.reduce<ReviewAsked | undefined>(
		(earliest, next) => (earliest === undefined || next.date < earliest.date ? next : earliest),
		undefined,
	)
	return first && { date: first.date, because: first.because }
}
/** @internal */
export const reviewOf = (from: Reviewed, protocol: Protocol): Prescription['review'] =>
	earliestReview(reviewsAsked(from, protocol))
/** What the pairs ask for once their days are the clinician's. */
export const reviewsOfPairs = (from: {
	owned: Kept<Reviewed['owned']>
	visitDate: string
}): ReviewAsked[] =>
	afterPairs(from).map(({ date, because }) => ({
		by: 'owned',
		date: afterToday(date, from),
		because,
	}))
