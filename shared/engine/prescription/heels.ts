/** What stands under the heels: the insert and the raise of a visit, worked out together. */
import type { InsertResult, RaiseResult } from '../findings/assessment.ts'
import type { InsertRoom } from '../insert/facts.ts'
import { insert } from '../insert/insert.ts'
import { insertsInside } from '../insert/pairs.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { type RaiseContext, raise } from '../raise/raise.ts'
import type { Visit } from '../visit/visit.ts'

export interface Heels {
	raised: RaiseResult
	inserts: InsertResult
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
	const wanted = raise(visit, context, protocol)
	const { posture, gate } = context
	const inside = present({ posture, gate, wanted, room })
	const insertsUnder = insertsInside(insert(visit, inside, protocol), wanted, visit)
	const raised = raise(visit, { ...context, insertsInside: insertsUnder }, protocol)
	return { raised, inserts: insert(visit, { ...inside, raised }, protocol) }
}
