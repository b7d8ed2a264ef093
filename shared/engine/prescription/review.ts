/** When the player is seen again: the earliest day that any part of the plan asks for. */
import type { Gate, GrowthResult, Prescription } from '../findings/assessment.ts'
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
interface Asked {
	date: string
	because: string[]
}
const daysAfter: Readonly<Partial<Record<Action, ThresholdKey>>> = {
	imaging: 'prescription.imagingReviewDays',
	letter: 'prescription.letterReviewDays',
}
/** Monday to Friday; 1 January 1970 was a Thursday. */
const isWorkingDay = (iso: string): boolean => {
	const weekday = (((dayNumber(iso) + 3) % 7) + 7) % 7
	return weekday < 5
}
/** The day after a number of working days; holidays are not known. @internal */
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
const afterPairs = ({ owned }: Reviewed): Asked[] =>
	owned.flatMap(({ by, because }) => (by === undefined ? [] : [{ date: by, because }]))

/** The earliest day; never before the next one, since the player stands here today. */
export function reviewOf(from: Reviewed, protocol: Protocol): Prescription['review'] {
	const asked = [
		...afterGate(from, protocol),
		...afterSigns(from, protocol),
		...afterGrowth(from),
		...afterRaise(from, protocol),
		...afterInsert(from, protocol),
		...afterPairs(from),
	].map(({ date, because }) => ({ date: laterDay(date, addDays(from.visitDate, 1)), because }))
	return asked.reduce<Prescription['review']>(
		(first, next) => (first === undefined || next.date < first.date ? next : first),
		undefined,
	)
}
