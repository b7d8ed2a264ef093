/** What stands under the heels: the insert and the raise of a visit, worked out together. */
import type { InsertResult, InsertSide, PerSide, RaiseResult } from '../findings/assessment.ts'
import type { InsertRoom } from '../insert/facts.ts'
import { insert, insertElements } from '../insert/insert.ts'
import { insertsInside } from '../insert/pairs.ts'
import { isTrainerPair } from '../insert/raised.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type RaiseContext, type Raised, raise, raiseFigures } from '../raise/raise.ts'
import type { Visit } from '../visit/visit.ts'

export interface Heels {
	raised: RaiseResult
	inserts: InsertResult
}
/** What the insert makes way for, and the raise's context with the insert under the heel. */
function shared(visit: Visit, context: RaiseContext, protocol: Protocol, room?: InsertRoom) {
	const wanted = raiseFigures(visit, context, protocol)
	const { posture, gate } = context
	const inside = present({ posture, gate, wanted, room })
	const alone = insertElements(visit, inside, protocol)
	return { inside, beside: { ...context, insertsInside: insertsInside(alone, wanted, visit) } }
}
/**
 * Insert and raise share the room under a heel: the insert makes way for the raise that is wanted,
 * the raise is given what the insert leaves, and the insert then carries it. @param room the boot
 */
export function heelsOf(
	visit: Visit,
	context: RaiseContext,
	protocol: Protocol,
	room?: InsertRoom,
): Heels {
	const { inside, beside } = shared(visit, context, protocol, room)
	const raised = raise(visit, beside, protocol)
	return { raised, inserts: insert(visit, { ...inside, raised }, protocol) }
}
/** Whether more lies in a boot that the player owns than one holds. */
const isTooHigh = ({ raised: { pairs } }: Heels, visit: Visit, protocol: Protocol): boolean =>
	pairs.some(
		({ pair, left, right }) =>
			visit.footwear?.some(({ id }) => id === pair) === true &&
			!isTrainerPair(pair, visit) &&
			Math.max(left.addedUnderHeelMm, right.addedUnderHeelMm) > protocol.value('insert.raiseMaxMm'),
	)
/**
 * Insert and raise by the room in a model of the shelf. The liner that comes out of it gives none
 * back in the boots that the player owns: where the insert is too high for one of those, it is made
 * without that room. @param model the room in the first model that passes
 */
export function heelsInModel(
	visit: Visit,
	context: RaiseContext,
	protocol: Protocol,
	model: InsertRoom,
): Heels {
	const made = heelsOf(visit, context, protocol, model)
	if (!isTooHigh(made, visit, protocol)) return made
	const { depthOverToesMm } = model
	return heelsOf(visit, context, protocol, present({ depthOverToesMm }))
}
/** The same without findings, steps and workings, for what only reckons with it. */
export function heelFigures(
	visit: Visit,
	context: RaiseContext,
	protocol: Protocol,
): { raised: Raised; inserts: PerSide<InsertSide> } {
	const { inside, beside } = shared(visit, context, protocol)
	const raised = raiseFigures(visit, beside, protocol)
	return { raised, inserts: insertElements(visit, { ...inside, raised }, protocol) }
}
