/** The raise of a visit, with what the rooms before it found. */
import { ankle } from '../../shared/engine/ankle/ankle.ts'
import { factsOf } from '../../shared/engine/facts/facts-of.ts'
import { openGate } from '../../shared/engine/facts/held.ts'
import type { Gate, Holdable, RaiseResult } from '../../shared/engine/findings/assessment.ts'
import { posture } from '../../shared/engine/posture/posture.ts'
import { openProtocol } from '../../shared/engine/protocol/protocol.ts'
import { type RaiseContext, raise } from '../../shared/engine/raise/raise.ts'
import { gateOf } from '../../shared/engine/screening/gate.ts'
import { screening } from '../../shared/engine/screening/screening.ts'
import { sizing } from '../../shared/engine/sizing/sizing.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'

const protocol = openProtocol()
/** @param more a gate in place of the visit's own, and pairs that others leave off or replace */
export function raiseOf(
	visit: Visit,
	more: Partial<Pick<RaiseContext, 'gate' | 'pairsLeftOff' | 'pairsReplaced'>> = {},
): { result: RaiseResult; context: RaiseContext } {
	const screened = screening(visit, protocol)
	const read = { screening: screened, posture: posture(visit, [], protocol) }
	const facts = factsOf(visit, read, protocol)
	const gate = more.gate ?? gateOf(visit, [], screened, facts, protocol).gate
	const limbs = { facts, gate }
	const context: RaiseContext = {
		...more,
		facts,
		gate,
		ankle: ankle(visit, [], protocol, limbs),
		posture: posture(visit, [], protocol, limbs),
		sizing: sizing(visit, [], protocol),
	}
	return { result: raise(visit, context, protocol), context }
}
/** A gate that holds one thing: of the player, or of a limb. */
export function holding(what: Holdable, where: 'person' | 'left' | 'right'): Gate {
	const hold = { what, rule: 'x', until: 'outcome', since: '2026-09-01' } as const
	return { ...openGate, [where]: { ...openGate[where], state: 'held', holds: [hold] } }
}
