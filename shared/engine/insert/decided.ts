/**
 * The insert as decided: elements changed, dropped or added with the reason kept. What is held has
 * none, whatever was decided before.
 */
import { openGate } from '../facts/held.ts'
import type {
	InsertConflict,
	InsertElement,
	InsertResult,
	InsertSide,
	Kept,
	KeptAssessment,
} from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import {
	type DecidedOn,
	type Decisions,
	type InsertDecision,
	isAboutOther,
} from '../visit/decisions.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { elementText } from '../words/en/insert-names.ts'
import { state } from '../words/statement.ts'
import { withAmount } from './amounts.ts'
import { conflictOn } from './conflict.ts'
import { insert } from './insert.ts'
import type { RaiseFigures } from './raised.ts'
import { isRaise } from './room-in-boot.ts'

/**
 * An element as it stands, what was decided about it, and what was proposed where it was changed.
 */
export interface DecidedElement {
	element: InsertElement
	decision?: InsertDecision
	proposed?: InsertElement
	/** It was changed when something else was proposed: to be looked at again. */
	overtaken?: true
}
/** What is decided about an element: which one, how much, and for which shoes. */
export const elementAsDecided = (proposed: InsertElement): DecidedOn => {
	const { element, choice, value, where } = proposed
	return {
		says: elementText(proposed),
		code: element,
		params: present({ choice, value: value === undefined ? undefined : rounded(value, 1), where }),
	}
}
/**
 * The clinician's change or drop of an element that was made when something else was proposed. It
 * stands until it is looked at again, since what a person chose is never undone unasked.
 */
export const overtakenDecision = (
	element: InsertElement,
	decisions: readonly InsertDecision[],
): InsertDecision | undefined =>
	decisions.findLast(
		(decision) =>
			decision.element === element.element &&
			(decision.choice === 'change' || decision.choice === 'drop') &&
			isAboutOther(decision, elementAsDecided(element)),
	)
/** The proposal with the conflicts that are left, and the elements that stand. */
export interface DecidedInsert {
	result: Kept<InsertResult>
	left: DecidedElement[]
	right: DecidedElement[]
}
/** The insert that stands after the clinician's decisions. */
export function decidedInsert(
	visit: Visit,
	assessment: KeptAssessment,
	decisions: Decisions,
	protocol: Protocol,
): DecidedInsert {
	const result = assessment.prescription
		? assessment.insert
		: releasedBefore(visit, assessment, decisions, protocol)
	const decided = perSide((side) =>
		isHeldInsert(result[side])
			? []
			: withDecisions(result[side].elements, decisions.insert?.[side] ?? [], protocol),
	)
	const isDropped = (side: Side, element: string) =>
		result[side].elements.some((proposed) => proposed.element === element) &&
		!decided[side].some((kept) => kept.element.element === element)
	return {
		result: {
			...result,
			conflicts: [
				...result.conflicts.filter((conflict) => isOpen(conflict, isDropped)),
				...bothSides.flatMap((side) => decidedConflicts(side, decided[side], protocol)),
			],
		},
		...decided,
	}
}
/** Whether nothing is proposed because of a sign; records of before 0.4 say stopped. */
const isHeldInsert = ({ state }: Pick<InsertSide, 'state'>): boolean =>
	state === 'held' || state === 'stopped'
/**
 * The insert of a record of before 0.4, where an act recorded for each sign let it go on: the side
 * is worked out as it would have been without the stop, with the raise of that time.
 */
function releasedBefore(
	visit: Visit,
	{ insert: kept, posture, ankle }: KeptAssessment,
	{ screeningDone = [] }: Decisions,
	protocol: Protocol,
): Kept<InsertResult> {
	const isReleased = (side: Side): boolean => {
		const done = screeningDone.filter((one) => one.side === side).flatMap(({ items }) => items)
		return (
			kept[side].state === 'stopped' && kept[side].stoppedBy.every(({ id }) => done.includes(id))
		)
	}
	if (!bothSides.some(isReleased)) return kept
	const raise = raiseOf(ankle)
	const made = insert(visit, { posture, gate: openGate, wanted: raise, raised: raise }, protocol)
	return { ...kept, ...perSide((side) => (isReleased(side) ? made[side] : kept[side])) }
}
/** The raise of a record of before 0.4: one for whatever shoe, by the insert. */
const raiseOf = ({ heelRaiseMm }: KeptAssessment['ankle']): RaiseFigures => ({
	aim: { kind: 'none', because: [] },
	pairs: heelRaiseMm
		? [
				{
					pair: 'role.match',
					offsetFrom: 'unknown',
					limits: [],
					...perSide((side) => ({
						addMm: heelRaiseMm[side],
						madeBy: 'insert' as const,
						addedUnderHeelMm: heelRaiseMm[side],
					})),
				},
			]
		: [],
})
/**
 * A conflict goes with an element that was dropped; of a stack of several it stays while any of
 * them stands.
 */
function isOpen(
	{ code, side, elements }: Kept<InsertConflict>,
	isDropped: (side: Side, element: string) => boolean,
): boolean {
	if (elements.length === 0) return true
	return code === 'insert.volume'
		? !elements.every((element) => isDropped(side, element))
		: !elements.some((element) => isDropped(side, element))
}
/**
 * What the clinician's own figures run against: the limit of raises in a boot, and the heel cup
 * that a skive needs. Nothing is said of a proposal that was left as it is.
 */
const decidedConflicts = (
	side: Side,
	decided: readonly DecidedElement[],
	protocol: Protocol,
): InsertConflict[] =>
	decided.some(({ decision }) => decision !== undefined && decision.choice !== 'accept')
		? [...raisesTooHigh(side, decided, protocol), ...cupTooShallow(side, decided, protocol)]
		: []
function raisesTooHigh(
	side: Side,
	decided: readonly DecidedElement[],
	protocol: Protocol,
): InsertConflict[] {
	const raises = decided
		.map(({ element }) => element)
		.filter((element) => element.where !== 'trainer' && isRaise(element))
	const totalMm = rounded(
		raises.reduce((sumMm, raise) => sumMm + (raise.value ?? 0), 0),
		1,
	)
	const above = (limit: 'stop' | 'warn', key: 'ankle.raiseStopMm' | 'ankle.raiseWarnMm') => [
		conflictOn(
			side,
			state('insert.decided-raise', { side, totalMm, limitMm: protocol.value(key), limit }),
			raises.map((raise) => raise.element),
			protocol.basis('raises in a boot, as decided', key),
		),
	]
	if (totalMm > protocol.value('ankle.raiseStopMm')) return above('stop', 'ankle.raiseStopMm')
	if (totalMm > protocol.value('ankle.raiseWarnMm')) return above('warn', 'ankle.raiseWarnMm')
	return []
}
function cupTooShallow(
	side: Side,
	decided: readonly DecidedElement[],
	protocol: Protocol,
): InsertConflict[] {
	const amountOf = (name: string) =>
		decided.find(({ element }) => element.element === name)?.element.value
	const skives = ['medial-skive', 'lateral-skive'].filter((name) => (amountOf(name) ?? 0) > 0)
	const cupMm = amountOf('heel-cup')
	if (skives.length === 0 || cupMm === undefined) return []
	const deepestMm = Math.max(...skives.map((name) => amountOf(name) ?? 0))
	const key =
		deepestMm > protocol.value('insert.skiveBigSum') ? 'insert.skiveBigCupMm' : 'insert.skiveCupMm'
	if (cupMm >= protocol.value(key)) return []
	return [
		conflictOn(
			side,
			state('insert.decided-cup', {
				side,
				neededMm: protocol.value(key),
				cupMm: rounded(cupMm, 1),
			}),
			[...skives, 'heel-cup'],
			protocol.basis('skive against cup depth, as decided', key),
		),
	]
}
/**
 * Applies the decisions to the elements of one foot, in their order; additions come last.
 * @internal
 */
export function withDecisions(
	elements: readonly InsertElement[],
	decisions: readonly InsertDecision[],
	protocol: Protocol,
): DecidedElement[] {
	const kept = elements.flatMap((element) => decidedOf(element, decisions, protocol))
	const added = decisions
		.filter(
			({ choice, element: name }) =>
				choice === 'add' && !kept.some(({ element }) => element.element === name),
		)
		.map((decision) => ({ decision, element: addedBy(decision, protocol) }))
	return [...kept, ...added]
}
/** With the clinician's words in place of the sentence, or with its figures as changed. */
function changedBy(
	decision: InsertDecision,
	element: InsertElement,
	protocol: Protocol,
): InsertElement {
	const { value, option, says } = decision
	const { code, params, ...changed } = present({
		...withAmount(element, value, protocol),
		choice: option ?? element.choice,
	})
	return says === undefined ? present({ ...changed, code, params }) : { ...changed, says }
}
/** Nothing where it was dropped; without its decision where that was about another proposal. */
function decidedOf(
	element: InsertElement,
	decisions: readonly InsertDecision[],
	protocol: Protocol,
): DecidedElement[] {
	const decision = decisions.findLast(
		({ choice, element: name }) => name === element.element && choice !== 'add',
	)
	if (!decision) return [{ element }]
	const { choice } = decision
	if (choice === 'drop') return []
	const isOther = isAboutOther(decision, elementAsDecided(element))
	if (choice === 'change') {
		const changed = { element: changedBy(decision, element, protocol), decision, proposed: element }
		return [isOther ? { ...changed, overtaken: true } : changed]
	}
	return isOther ? [{ element }] : [{ element, decision }]
}
const addedBy = (decision: InsertDecision, protocol: Protocol): InsertElement =>
	changedBy(
		decision,
		{
			element: decision.element,
			where: 'both',
			says: decision.says ?? '',
			because: [{ measure: 'addedBy', value: decision.why ?? '' }],
			basis: {
				rule: 'added by the clinician',
				source: decision.why ?? '',
				strength: 'clinic',
			},
			cautions: [],
		},
		protocol,
	)
