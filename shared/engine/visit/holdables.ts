/** What may be held back, and what ends a hold: terms of the visit file and of the gate. */

/** Of the whole player. */
const heldOfPlayer = ['sport', 'match', 'impact', 'purchase', 'shelf', 'season', 'raise'] as const
/** On one limb. What `test` is stands in `load-tests.table.ts`. */
export const heldOfLimb = ['weight', 'test', 'exercise', 'insert'] as const
export const holdables = [...heldOfPlayer, ...heldOfLimb] as const
export type Holdable = (typeof holdables)[number]
/** Who or what ends a hold. */
export type HoldUntil =
	| 'outcome'
	| 'imaging-result'
	| 'treating-doctor'
	| 'surgeon'
	| 'foot-protection-review'
