/** A signed prescription in a few lines, for those who treat: what is held first. Pure. */

import { isHeld } from '../../engine/facts/held.ts'
import {
	type Action,
	actions,
	type Gate,
	type Hold,
	type Kept,
	type KeptAssessment,
} from '../../engine/findings/assessment.ts'
import type { Topic } from '../../engine/findings/finding.ts'
import type { SettledPlan } from '../../engine/prescription/settled.ts'
import { pairName } from '../../engine/report/pair-names.ts'
import { planOf } from '../../engine/report/plan-of.ts'
import { labelsOf } from '../../engine/report/player/size-labels.ts'
import { raiseLines } from '../../engine/report/raise-lines.ts'
import { buyingWaits } from '../../engine/report/waits.ts'
import type { Decisions } from '../../engine/visit/decisions.ts'
import { bothSides } from '../../engine/visit/sides.ts'
import type { Visit } from '../../engine/visit/visit.ts'
import { speakFrom } from '../../engine/words/speak.ts'
import { state } from '../../engine/words/statement.ts'
import { actionWords, capital, dateWords, shown, sizeShown } from '../../engine/words/words.ts'
import type { PlanLine, SummaryPair, SummarySizes } from './summary.ts'

/** What a signed visit kept. */
export interface SignedPlan {
	visit: Visit
	assessment: KeptAssessment
	decisions: Decisions
}
const t = speakFrom()
/** Rules that stand for whatever sign a record of before the plan held by. */
const ofRecordsBefore: readonly string[] = ['record-before-the-plan', 'screening.blocked']
const signOf = (rule: string): string =>
	ofRecordsBefore.includes(rule) ? 'warning-sign' : rule.replace(/^screening\./, '')

/** A line for each sign: what it holds, since when, and what ends it. */
function holdLines(holds: readonly Kept<Hold>[]): string[] {
	const groups = Map.groupBy(holds, ({ rule, side, until, since }) =>
		[rule, side, until, since].join(' '),
	)
	return [...groups.values()].flatMap((group) => {
		const [first] = group
		if (!first) return []
		const { rule, side = 'none', until, since } = first
		const what = [...new Set(group.map((hold) => hold.what))]
		return [state('gate.hold', { sign: signOf(rule), side, what, until, since }).says]
	})
}
/** What danger asks for and holds back; nothing where it does neither. */
function heldLines({ person, left, right }: Kept<Gate>): string[] {
	const parts = [person, left, right]
	const action = parts
		.map((part) => part.action)
		.reduce<Action>(
			(one, other) => (actions.indexOf(other) > actions.indexOf(one) ? other : one),
			'proceed',
		)
	return [
		...(action === 'proceed' ? [] : [`${capital(actionWords[action])}.`]),
		...holdLines(parts.flatMap(({ holds }) => holds)),
	]
}
/** Inside length to look for and its nearest labels; none while nothing may be bought. */
function sizeSays({ visit, assessment }: SignedPlan, plan: SettledPlan): string | undefined {
	const inside = plan.size.boots ?? plan.size.trainers
	if (!inside || buyingWaits(plan.gate)) return undefined
	const labels = labelsOf(visit, assessment.sizing).map(
		([system, { label }]) => `${system} ${sizeShown(label)}`,
	)
	return [`${shown(inside.min)} to ${shown(inside.max)} mm inside`, ...labels].join(', ')
}
/** Pairs with one verdict, each with its last day where it has one. */
const pairsSay = (
	plan: SettledPlan,
	visit: Visit,
	verdict: SettledPlan['owned'][number]['verdict'],
): string =>
	plan.owned
		.filter((pair) => pair.verdict === verdict)
		.map(({ id, by }) => `${pairName(id, visit, t)}${by ? ` by ${dateWords(by)}` : ''}`)
		.join('; ')
function insertSays({ insert }: SettledPlan): string {
	const sides = bothSides.filter((side) => insert[side].state === 'proposed')
	return sides.length === 2 ? 'left and right' : (sides[0] ?? '')
}
/** The whole prescription in a few lines. */
export function planInFew(signed: SignedPlan): { held: string[]; lines: PlanLine[] } {
	const plan = planOf(signed)
	const { visit } = signed
	const lines: [PlanLine['what'], string | undefined][] = [
		['size', sizeSays(signed, plan)],
		['raise', raiseLines(plan, visit, t).join('; ')],
		['stop-wearing', pairsSay(plan, visit, 'stop-wearing')],
		['replace', pairsSay(plan, visit, 'replace')],
		['insert', insertSays(plan)],
	]
	return {
		held: heldLines(plan.gate),
		lines: lines.flatMap(([what, says]) => (says ? [{ what, says: capital(says) }] : [])),
	}
}
const isUrgentToday: readonly Action[] = ['same-day', 'emergency']
/** Sport is held, or somebody is to be seen the same day: its pages go before all others. */
export const goesFirst = (signed: SignedPlan): boolean =>
	isHeld(planOf(signed).gate, 'sport') || isUrgentToday.includes(signed.assessment.screening.action)

const minutesPerHour = 60
/** The pairs at hand that have a last day: to be replaced by, or with room until. */
export function lastDays(signed: SignedPlan): { id: string; until: string }[] {
	const plan = planOf(signed)
	return (signed.visit.footwear ?? [])
		.filter(({ plannedAs }) => plannedAs === undefined)
		.flatMap(({ id }) => {
			const until = lastDayOf(id, plan, signed)
			return until === undefined ? [] : [{ id, until }]
		})
}
function lastDayOf(id: string, plan: SettledPlan, { assessment }: SignedPlan): string | undefined {
	const owned = plan.owned.find((pair) => pair.id === id)
	const isKept = owned?.verdict === 'keep' || owned?.verdict === 'modify'
	const measured = assessment.footwear.current.find((pair) => pair.id === id)
	return owned?.by ?? (isKept ? measured?.replaceBy : undefined)
}
/** The pairs at hand as they stood at the visit, in the order recorded. */
export function pairsInFew(signed: SignedPlan): SummaryPair[] {
	const { visit, assessment } = signed
	const plan = planOf(signed)
	return (visit.footwear ?? [])
		.filter(({ plannedAs }) => plannedAs === undefined)
		.map(({ id, minutesWorn }) => {
			const owned = plan.owned.find((pair) => pair.id === id)
			const measured = assessment.footwear.current.find((pair) => pair.id === id)
			const until = lastDayOf(id, plan, signed)
			return {
				name: capital(pairName(id, visit, t)),
				...(minutesWorn !== undefined && { hoursWorn: Math.round(minutesWorn / minutesPerHour) }),
				...(measured?.toeRoomMm !== undefined && { toeRoomMm: measured.toeRoomMm }),
				...(owned && { verdict: owned.verdict }),
				...(until !== undefined && { until }),
			}
		})
}
/** Lengths of a visit; undefined where no foot was measured. */
export function sizesInFew({ visit, assessment }: SignedPlan): SummarySizes | undefined {
	const { left, right, insideLengthMm, usableForBuying } = assessment.sizing
	if (left?.lengthMm === undefined && right?.lengthMm === undefined) return undefined
	return {
		visitDate: visit.visitDate,
		...(left?.lengthMm !== undefined && { leftMm: left.lengthMm }),
		...(right?.lengthMm !== undefined && { rightMm: right.lengthMm }),
		...(insideLengthMm && { insideMm: { min: insideLengthMm.min, max: insideLengthMm.max } }),
		isSwollen: usableForBuying === false,
	}
}
/** What a part of the plan that asks for the review is called. */
const askedBy: Readonly<Record<Topic, string>> = {
	sizing: 'size',
	ankle: 'ankles',
	posture: 'posture',
	growth: 'growth',
	screening: 'a warning sign',
	footwear: 'the pairs at hand',
	loading: 'load',
	insert: 'insert',
	raise: 'heel raise',
	season: 'season',
	conditions: 'the complaint',
	measure: 'measures',
	recheck: 'the time since the last visit',
	onfoot: 'a pair on the foot',
}
/** The day of the review and what asks for it; undefined where nothing does. */
export function reviewInFew(signed: SignedPlan): { date: string; why?: string } | undefined {
	const { assessment, decisions } = signed
	const { review } = planOf(signed)
	if (!review) return undefined
	const proposed = assessment.prescription?.review?.date
	if (decisions.reviewDate !== undefined && review.date !== proposed)
		return { date: review.date, why: 'set by the clinician' }
	const topics = assessment.findings
		.filter(({ id }) => review.because.includes(id))
		.map(({ topic }) => askedBy[topic])
	const why = [...new Set(topics)].join(', ')
	return { date: review.date, ...(why && { why }) }
}
