/**
 * The insert as decided: stops released by what was recorded, elements changed, dropped or added
 * with the reason kept.
 */
import type {
	Assessment,
	InsertConflict,
	InsertElement,
	InsertResult,
} from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Decisions, InsertDecision } from '../visit/decisions.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { elementText, type InsertRoom, insert, type Released } from './insert.ts'

export interface DecidedElement {
	element: InsertElement
	decision?: InsertDecision
	proposed?: InsertElement
}
export interface DecidedInsert {
	result: InsertResult
	left: DecidedElement[]
	right: DecidedElement[]
}

/** Ids of stops that the clinician's records release, by limb. */
export const releasedBy = (decisions: Pick<Decisions, 'screeningDone'>): Released =>
	perSide((side) =>
		(decisions.screeningDone ?? []).filter((one) => one.side === side).flatMap((one) => one.items),
	)

/** Limbs still waiting for a record of what was done; a new warning sign stops a limb again. */
export const stillBlocked = (
	assessment: Pick<Assessment, 'screening'>,
	decisions: Pick<Decisions, 'screeningDone'>,
): Side[] => {
	const released = releasedBy(decisions)
	return assessment.screening.blockedSides.filter((side) =>
		assessment.screening.blockedBy[side].some((id) => !released[side].includes(id)),
	)
}

/**
 * The insert that stands after the clinician's decisions. @param room the boot it goes into, where
 * known
 */
export function decidedInsert(
	visit: Visit,
	assessment: Assessment,
	decisions: Decisions,
	protocol: Protocol,
	room?: InsertRoom,
): DecidedInsert {
	const { sizing, ankle, posture, screening } = assessment
	const result = insert(
		visit,
		{ sizing, ankle, posture, screening, ...(room ? { room } : {}) },
		protocol,
		releasedBy(decisions),
	)
	const decided = perSide((side) =>
		result[side].state === 'stopped'
			? []
			: withDecisions(result[side].elements, decisions.insert?.[side] ?? []),
	)
	const gone = (side: Side, element: string) =>
		result[side].elements.some((one) => one.element === element) &&
		!decided[side].some((one) => one.element.element === element)
	// A conflict goes with an element that was dropped; of a stack of several it stays while any of
	// them stands.
	const open = result.conflicts.filter(
		(conflict) =>
			conflict.elements.length === 0 ||
			!(conflict.id.startsWith('insert.volume')
				? conflict.elements.every((element) => gone(conflict.side, element))
				: conflict.elements.some((element) => gone(conflict.side, element))),
	)
	return {
		result: {
			...result,
			conflicts: [
				...open,
				...bothSides.flatMap((side) => decidedConflicts(side, decided[side], protocol)),
			],
		},
		...decided,
	}
}
/**
 * What the clinician's own figures run against: the limit of raises in a boot, and the heel cup
 * that a skive needs.
 */
function decidedConflicts(
	side: Side,
	decided: readonly DecidedElement[],
	protocol: Protocol,
): InsertConflict[] {
	if (!decided.some(({ decision }) => decision !== undefined && decision.choice !== 'accept'))
		return []
	const value = (name: string) =>
		decided.find(({ element }) => element.element === name)?.element.value
	const raises = decided.flatMap(({ element }) =>
		element.where !== 'trainer' &&
		(element.element === 'heel-raise' || element.element === 'leg-length-raise')
			? [element]
			: [],
	)
	const total = rounded(
		raises.reduce((sum, one) => sum + (one.value ?? 0), 0),
		1,
	)
	const over =
		total > protocol.value('ankle.raiseStopMm')
			? 'ankle.raiseStopMm'
			: total > protocol.value('ankle.raiseWarnMm')
				? 'ankle.raiseWarnMm'
				: undefined
	const skives = (['medial-skive', 'lateral-skive'] as const).filter(
			(name) => (value(name) ?? 0) > 0,
		),
		cup = value('heel-cup')
	const cupKey =
		Math.max(0, ...skives.map((name) => value(name) ?? 0)) > protocol.value('insert.skiveBigSum')
			? 'insert.skiveBigCupMm'
			: 'insert.skiveCupMm'
	return [
		...(over
			? [
					{
						id: `insert.decided-raise.${side}`,
						side,
						elements: raises.map((raise) => raise.element),
						says:
							`The raises decided for the ${side} come to ${total} mm, above ` +
							`${protocol.value(over)} mm: ` +
							`${over === 'ankle.raiseStopMm' ? 'not inside a boot; put them on the sole or keep them to other shoes' : 'check heel hold and counter height in the boot'}.`,
						basis: protocol.basis('raises in a boot, as decided', over),
					},
				]
			: []),
		...(skives.length > 0 && cup !== undefined && cup < protocol.value(cupKey)
			? [
					{
						id: `insert.decided-cup.${side}`,
						side,
						elements: [...skives, 'heel-cup'],
						says:
							`The skive decided for the ${side} needs a heel cup of ` +
							`${protocol.value(cupKey)} mm; ${rounded(cup, 1)} mm is decided.`,
						basis: protocol.basis('skive against cup depth, as decided', cupKey),
					},
				]
			: []),
	]
}
/** Applies the decisions to the elements of one foot, in their order; additions come last. */
export function withDecisions(
	elements: readonly InsertElement[],
	decisions: readonly InsertDecision[],
): DecidedElement[] {
	const changed = (element: InsertElement, decision: InsertDecision): InsertElement => ({
		...element,
		...(decision.value === undefined ? {} : { value: decision.value }),
		...(decision.option === undefined ? {} : { choice: decision.option }),
		...(decision.says === undefined ? {} : { says: decision.says }),
	})
	const kept = elements.flatMap((element): DecidedElement[] => {
		const decision = decisions.findLast(
			(one) => one.element === element.element && one.choice !== 'add',
		)
		if (
			!decision ||
			(decision.choice === 'accept' &&
				decision.about !== undefined &&
				decision.about !== elementText(element))
		)
			return [{ element }]
		if (decision.choice === 'drop') return []
		return decision.choice === 'change'
			? [{ element: changed(element, decision), decision, proposed: element }]
			: [{ element, decision }]
	})
	const own = decisions
		.filter(
			(decision) =>
				decision.choice === 'add' &&
				!kept.some(({ element }) => element.element === decision.element),
		)
		.map(
			(decision): DecidedElement => ({
				decision,
				element: changed(
					{
						element: decision.element,
						where: 'both',
						says: decision.says ?? '',
						because: [{ measure: 'Added by the clinician', value: decision.why ?? '' }],
						basis: {
							rule: 'added by the clinician',
							source: decision.why ?? '',
							strength: 'clinic',
						},
						cautions: [],
					},
					decision,
				),
			}),
		)
	return [...kept, ...own]
}
