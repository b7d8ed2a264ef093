/**
 * What a row of the element table is, the findings that rows share, and what speaks against one.
 */
import type { InsertElement } from '../../findings/assessment.ts'
import type { Because } from '../../protocol/basis.ts'
import type { ThresholdKey } from '../../protocol/protocol.ts'
import { type Condition, termWords } from '../../visit/terms.ts'
import type { ElementId } from '../element-words.ts'
import type { InsertFacts } from '../facts.ts'

/** Finding to element. */
export interface ElementRow {
	element: ElementId
	/** The reasons that call for it; none: it is not proposed. */
	when(facts: InsertFacts): Because[]
	key: ThresholdKey
	unit: string
	/** The rows of the usual least and most. */
	range: readonly [ThresholdKey, ThresholdKey]
	where: InsertElement['where']
	says: string
	/** Whether a shell is needed to carry it; a raise or a cushion alone needs none. */
	device: boolean
	/** Conditions on the same side, or a measured finding, that speak against it, and the words. */
	against: readonly {
		conditions: readonly Condition[]
		found?(facts: InsertFacts): boolean
		says: string
		hard?: true
	}[]
	/** Always said. */
	cautions: readonly string[]
}
/** The foot posture as a reason, where it is pronated; also where highly so. */
export const pronated = (facts: InsertFacts): Because[] =>
	facts.fpiBand === 'pronated' || facts.fpiBand === 'highly-pronated'
		? [{ measure: 'Foot posture index', value: facts.fpi ?? facts.fpiBand }]
		: []
/** The foot posture as a reason, where it is supinated; also where highly so. */
export const supinated = (facts: InsertFacts): Because[] =>
	facts.fpiBand === 'supinated' || facts.fpiBand === 'highly-supinated'
		? [{ measure: 'Foot posture index', value: facts.fpi ?? facts.fpiBand }]
		: []
/** A finding as a reason, where it holds. */
export const only = (holds: boolean, measure: string, value: string | number): Because[] =>
	holds ? [{ measure, value }] : []
/** Every group of reasons must be there. */
export const together = (...groups: Because[][]): Because[] =>
	groups.every((group) => group.length > 0) ? groups.flat() : []
/** Complaints that a flat foot gives. */
export const flatPain = (facts: InsertFacts) =>
	facts.nowHereOrUnsided('flexible-flatfoot-pain', 'posterior-tibial-tendinopathy', 'shin-pain')
/** Complaints of the outer foot and ankle. */
export const outerPain = (facts: InsertFacts) =>
	facts.nowHereOrUnsided('lateral-ankle-instability', 'peroneal-tendinopathy', 'cavus-foot-pain')
/** Complaints that a forefoot valgus or a plantarflexed first ray gives. */
export const forefootPain = (facts: InsertFacts) =>
	facts.nowHereOrUnsided(
		'sesamoid-pain',
		'metatarsalgia',
		'cavus-foot-pain',
		'lateral-ankle-instability',
		'peroneal-tendinopathy',
	)

/** Conditions whose history speaks against an element as much as the condition itself. */
const history: readonly Condition[] = [
	'fifth-metatarsal-stress-fracture',
	'lateral-ankle-instability',
]
/** Words against this element on this side; `hard` ones take it out. */
export function speaksAgainst(
	row: ElementRow,
	facts: InsertFacts,
): { says: string; hard: boolean }[] {
	return row.against.flatMap(({ conditions, found: measured, says, hard = false }) => {
		if (measured?.(facts)) return [{ says, hard }]
		const recorded = conditions.filter((condition) => {
			const reasons = history.includes(condition)
				? facts.everHereOrUnsided(condition)
				: facts.nowHereOrUnsided(condition)
			return reasons.length > 0
		})
		return recorded.length > 0
			? [{ says: `${says} (${recorded.map(termWords).join(', ')})`, hard }]
			: []
	})
}
