/** What to do first: at most three, most urgent first, each with who and when. */
import { isHeld } from '../facts/held.ts'
import type { Holdable, OwnedPair, Prescription, Priority } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { laterDay } from '../plain/days.ts'
import type { HoldUntil } from '../visit/holdables.ts'
import { bothSides } from '../visit/sides.ts'
import type { PairRole } from '../visit/terms.ts'
import { type Statement, state } from '../words/statement.ts'
import { placeFor } from './emergency-department.ts'
import { pairsLeftOff } from './owned.ts'
import { becauseOf } from './review.ts'
import { mostUrgent } from './urgency.ts'

const most = 3
/** What priorities are made of. */
export interface Urgent
	extends Pick<
		Prescription,
		'gate' | 'raise' | 'insert' | 'insertKept' | 'owned' | 'pairs' | 'review'
	> {
	minor: boolean
	visitDate: string
	/** The last day by which a pair is bought. */
	buyBy: string
	findings: readonly Finding[]
	nameOf(id: string): string
	/** What an owned pair is worn for. */
	rolesOf(id: string): readonly PairRole[]
}
type Unranked = Omit<Priority, 'rank'>
type Part = (from: Urgent) => Unranked[]

const make = (
	statement: Statement,
	who: Priority['who'],
	when: string,
	because: string[],
): Unranked => ({ ...statement, who, when, because })
const family = ({ minor }: Urgent): Priority['who'] => (minor ? 'guardian' : 'player')

/** Also where nothing is found but core questions are open. */
const act: Part = ({ gate, visitDate, findings }) => {
	const parts = [gate.person, gate.left, gate.right]
	const action = mostUrgent(parts.map((part) => part.action))
	const unasked = parts.some(({ state: found }) => found === 'not-established')
	if (action === 'proceed' && !unasked) return []
	const because = becauseOf(gate)
	const statement = state('priority.act', {
		action,
		...placeFor(action, findings, new Set(because)),
	})
	return [make(statement, 'clinician', visitDate, because)]
}
/** What is held without a referral: who says when it may begin again. */
const clear: Part = ({ gate, visitDate }) => {
	const parts = [gate.person, gate.left, gate.right]
	if (mostUrgent(parts.map((part) => part.action)) !== 'proceed') return []
	const holds = gate.person.holds.filter(({ what }) => stopped.includes(what))
	const [until] = clearedBy.filter((end) => holds.some((hold) => hold.until === end))
	if (until === undefined) return []
	const what = [...new Set(holds.filter((hold) => hold.until === until).map((hold) => hold.what))]
	return [make(state('priority.clear', { what, until }), 'clinician', visitDate, becauseOf(gate))]
}
const stopped: readonly Holdable[] = ['sport', 'match', 'impact']
/** The hardest to come by first. */
const clearedBy: readonly HoldUntil[] = [
	'surgeon',
	'treating-doctor',
	'imaging-result',
	'foot-protection-review',
	'outcome',
]
const withVerdict = ({ owned }: Urgent, verdict: OwnedPair['verdict']): OwnedPair[] =>
	owned.filter((pair) => pair.verdict === verdict)
const reasonsOf = (pairs: readonly OwnedPair[]): string[] => [
	...new Set(pairs.flatMap(({ because }) => because)),
]
const stopWearing: Part = (from) => {
	const pairs = withVerdict(from, 'stop-wearing')
	if (pairs.length === 0) return []
	const statement = state('priority.stop-wearing', {
		pairs: pairs.map(({ id }) => from.nameOf(id)),
	})
	return [make(statement, family(from), from.visitDate, reasonsOf(pairs))]
}
/** Not worn before it is mended. */
const mendFirst: Part = (from) => {
	const leftOff = pairsLeftOff(withVerdict(from, 'modify'))
	if (leftOff.length === 0) return []
	const statement = state('priority.mend-first', { pairs: leftOff.map(from.nameOf) })
	const because = reasonsOf(from.owned.filter(({ id }) => leftOff.includes(id)))
	return [make(statement, family(from), from.visitDate, because)]
}
const idsOf = ({ findings }: Urgent, ...beginnings: string[]): string[] =>
	findings
		.filter(
			({ code, level }) => level !== 'note' && beginnings.some((each) => code.startsWith(each)),
		)
		.map(({ id }) => id)
const raise: Part = (from) => {
	const sides = bothSides.filter((side) => from.raise.pairs.some((pair) => pair[side].addMm > 0))
	if (sides.length === 0) return []
	const because = idsOf(from, 'raise.', 'ankle.')
	return [make(state('priority.raise', { sides }), 'clinician', from.visitDate, because)]
}
/** It can wait where there is no pair to wear it in. */
const isWorn = ({ state: made, pairs }: Urgent['insert']['left']): boolean =>
	made === 'proposed' && pairs.length > 0
/** One that is worn is not got again: at most it is adjusted. */
function adjustInsert(from: Urgent): Unranked[] {
	const lines = from.insertKept?.lines ?? []
	const sides = bothSides.filter((side) => lines.some((line) => line.side === side))
	if (sides.length === 0) return []
	const because = idsOf(from, 'recheck.insert-trouble', 'insert.')
	return [make(state('priority.adjust-insert', { sides }), 'clinician', from.visitDate, because)]
}
const insert: Part = (from) => {
	if (from.insertKept) return adjustInsert(from)
	const sides = bothSides.filter((side) => isWorn(from.insert[side]))
	if (sides.length === 0) return []
	const because = idsOf(from, 'insert.')
	return [make(state('priority.insert', { sides }), 'clinician', from.visitDate, because)]
}
/** The first day by which any of them is to be replaced; without one, the review. */
const replace: Part = (from) => {
	const pairs = withVerdict(from, 'replace')
	if (pairs.length === 0) return []
	const [first = from.review?.date ?? from.visitDate] = pairs.flatMap(({ by }) => by ?? []).sort()
	const when = laterDay(first, from.visitDate)
	const statement = state('priority.replace', { pairs: pairs.map(({ id }) => from.nameOf(id)) })
	return [make(statement, family(from), when, reasonsOf(pairs))]
}
const modify: Part = (from) => {
	const mended = withVerdict(from, 'modify')
	const leftOff = pairsLeftOff(mended)
	const pairs = mended.filter(({ id }) => !leftOff.includes(id))
	if (pairs.length === 0) return []
	const statement = state('priority.modify', { pairs: pairs.map(({ id }) => from.nameOf(id)) })
	const when = from.review?.date ?? from.visitDate
	return [make(statement, family(from), when, reasonsOf(pairs))]
}
/** Nobody hurries to buy for what may not be done yet. */
const waitsIn = ({ gate }: Urgent, role: PairRole): boolean =>
	(role === 'match' && isHeld(gate, 'match')) || (role !== 'everyday' && isHeld(gate, 'impact'))
/** At once in place of what must not be worn; else by the review, and no later than usual. */
function buyBy(from: Urgent): string {
	const { review: planned, visitDate } = from
	if (planned === undefined || withVerdict(from, 'stop-wearing').length > 0) return visitDate
	const [first = from.buyBy] = [planned.date, from.buyBy].sort()
	return first
}
const buy: Part = (from) => {
	// a pair to be replaced is the same purchase; a foot that is swollen is measured again first
	const replaced = withVerdict(from, 'replace').flatMap(({ id }) => from.rolesOf(id))
	const role = from.pairs.find(
		(pair) => pair.means === 'buy' && !replaced.includes(pair.role) && !waitsIn(from, pair.role),
	)?.role
	const isSized = !from.findings.some(({ code }) => code === 'sizing.not-for-buying')
	if (role === undefined || !isSized || isHeld(from.gate, 'purchase')) return []
	return [
		make(state('priority.buy', { role }), family(from), buyBy(from), idsOf(from, 'footwear.')),
	]
}
const review: Part = (from) =>
	from.review
		? [make(state('priority.review'), family(from), from.review.date, from.review.because)]
		: []
/** Most urgent first. */
const parts: readonly Part[] = [
	act,
	clear,
	stopWearing,
	mendFirst,
	raise,
	insert,
	replace,
	modify,
	buy,
	review,
]
/** Behind a stop: what danger asks for, and when the player is seen again. */
const behindStop: readonly Part[] = [act, clear, stopWearing, mendFirst, review]
export const prioritiesOf = (from: Urgent): Priority[] =>
	(isHeld(from.gate, 'sport') ? behindStop : parts)
		.flatMap((part) => part(from))
		.slice(0, most)
		.map((priority, index) => ({ rank: index + 1, ...priority }))
