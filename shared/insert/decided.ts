/** The insert as decided: stops released by what was recorded, elements changed, dropped or added with the reason kept. */
import type { Assessment, InsertElement, InsertResult } from '../assessment.ts'
import type { Decisions, InsertDecision } from '../decisions.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { insert, type InsertRoom, type Released } from './insert.ts'

export interface DecidedElement { element: InsertElement; decision?: InsertDecision; proposed?: InsertElement }
export interface DecidedInsert { result: InsertResult; left: DecidedElement[]; right: DecidedElement[] }

/** Ids of stops that the clinician's records release, by limb. */
export const releasedBy = (decisions: Pick<Decisions, 'screeningDone'>): Released => perSide((side) => (decisions.screeningDone ?? []).filter((one) => one.side === side).flatMap((one) => one.items))

/** Limbs still waiting for a record of what was done; a new warning sign stops a limb again. */
export const stillBlocked = (assessment: Pick<Assessment, 'screening'>, decisions: Pick<Decisions, 'screeningDone'>): Side[] => {
	const released = releasedBy(decisions)
	return assessment.screening.blockedSides.filter((side) => assessment.screening.blockedBy[side].some((id) => !released[side].includes(id)))
}

/** The insert that stands after the clinician's decisions. @param room the boot it goes into, where known */
export function decidedInsert(visit: Visit, assessment: Assessment, decisions: Decisions, protocol: Protocol, room?: InsertRoom): DecidedInsert {
	const { sizing, ankle, posture, screening } = assessment
	const result = insert(visit, { sizing, ankle, posture, screening, ...(room ? { room } : {}) }, protocol, releasedBy(decisions))
	return { result, ...perSide((side) => (result[side].state === 'stopped' ? [] : withDecisions(result[side].elements, decisions.insert?.[side] ?? []))) }
}
/** Applies the decisions to the elements of one foot, in their order; additions come last. */
export function withDecisions(elements: readonly InsertElement[], decisions: readonly InsertDecision[]): DecidedElement[] {
	const changed = (element: InsertElement, decision: InsertDecision): InsertElement => ({ ...element, ...(decision.value === undefined ? {} : { value: decision.value }), ...(decision.option === undefined ? {} : { choice: decision.option }), ...(decision.says === undefined ? {} : { says: decision.says }) })
	const kept = elements.flatMap((element): DecidedElement[] => {
		const decision = decisions.findLast((one) => one.element === element.element && one.choice !== 'add')
		if (!decision) return [{ element }]
		if (decision.choice === 'drop') return []
		return decision.choice === 'change' ? [{ element: changed(element, decision), decision, proposed: element }] : [{ element, decision }]
	})
	const own = decisions.filter((one) => one.choice === 'add' && !kept.some(({ element }) => element.element === one.element)).map((decision): DecidedElement => ({ decision, element: changed({ element: decision.element, where: 'both', says: decision.says ?? '', because: [{ measure: 'Added by the clinician', value: decision.why ?? '' }], basis: { rule: 'added by the clinician', source: decision.why ?? '', strength: 'clinic' }, cautions: [] }, decision) }))
	return [...kept, ...own]
}
