/** The insert of each foot as it stands in the plan: which elements, and in which pairs. */
import { isHeld } from '../facts/held.ts'
import type { Gate, InsertResult, PerSide, PrescribedInsert } from '../findings/assessment.ts'
import { insertPairs, type PairsWorn } from '../insert/pairs.ts'
import { perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

/** @param worn the pairs of the roles, and what is to become of the owned ones */
export const prescribedInserts = (
	visit: Visit,
	inserts: InsertResult,
	gate: Gate,
	worn: PairsWorn,
): PerSide<PrescribedInsert> =>
	perSide((side) => {
		const { state, elements } = inserts[side]
		if (state === 'held' || state === 'stopped' || isHeld(gate, 'insert', side))
			return { state: 'held', elements: [], pairs: [] }
		return {
			state,
			elements: [...new Set(elements.map(({ element }) => element))],
			pairs: insertPairs(inserts[side], worn, visit),
		}
	})
