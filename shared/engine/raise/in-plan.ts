/** The figure of a pair in a plan: every page, order and modification reads it here. */
import type { RaiseInPair, RaisePlan } from '../findings/assessment.ts'

/**
 * @param pairId id of an owned pair, or `role.<role>` for one to be chosen; undefined where the plan
 * says nothing of it (held, or not among the pairs)
 */
export const raiseIn = (plan: Pick<RaisePlan, 'pairs'>, pairId: string): RaiseInPair | undefined =>
	plan.pairs.find(({ pair }) => pair === pairId)
