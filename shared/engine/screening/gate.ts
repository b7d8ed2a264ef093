/**
 * The gate of a visit: what danger holds back, by the rules of `protocol/holds.table.ts`. Holds of
 * earlier visits stand until an outcome ends them.
 */

import type { PlayerFacts, ScreeningResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Gate, GatePart, Hold } from '../findings/gate.ts'
import { type Action, actions } from '../findings/screening-result.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { unaskedOf } from './core-questions.ts'
import { carriedId, gateFindings } from './gate-findings.ts'
import { openSigns } from './open-signs.ts'
import type { OpenSign } from './signs-of.ts'

/** The gate, and what is said beside the findings of the screening itself. */
export interface Gated {
	gate: Gate
	findings: Finding[]
}
/** @param before the player's earlier visits, oldest first: what they left open is held still */
export function gateOf(
	visit: Visit,
	before: readonly Visit[],
	screening: ScreeningResult,
	facts: PlayerFacts,
	protocol: Protocol,
): Gated {
	const signs = openSigns(visit, before, screening, protocol)
	const { open } = signs
	const unasked = unaskedOf({ visit, ottawa: screening.ottawa, protocol })
	const part = (found: readonly OpenSign[], limb: Side | undefined): GatePart =>
		partOf(found, limb, visit.visitDate, unasked[limb ?? 'person'])
	const ofLimb = (side: Side): GatePart =>
		part(
			open.filter((sign) => sign.side === undefined || sign.side === side),
			side,
		)
	return {
		gate: { person: part(open, undefined), ...perSide(ofLimb) },
		findings: gateFindings(signs, visit, facts, protocol),
	}
}
const worst = (signs: readonly OpenSign[]): Action =>
	signs.reduce<Action>(
		(highest, { action }) =>
			actions.indexOf(action) > actions.indexOf(highest) ? action : highest,
		'proceed',
	)
/** Each hold once: of the same one carried and found again, that with the earlier beginning. */
function holdsOf(signs: readonly OpenSign[], limb: Side | undefined): Hold[] {
	const held = new Map<string, Hold>()
	for (const { rule, side, since, holds } of signs)
		for (const { what, until } of holds.filter((hold) => hold.limb === limb)) {
			const key = `${what} ${rule} ${side ?? ''}`
			const before = held.get(key)
			if (before === undefined || since < before.since)
				held.set(key, { what, rule, ...(side === undefined ? {} : { side }), until, since })
		}
	return [...held.values()]
}
function partOf(
	signs: readonly OpenSign[],
	limb: Side | undefined,
	today: string,
	unasked: string[],
): GatePart {
	const holds = holdsOf(signs, limb)
	const open = unasked.length > 0 ? 'not-established' : 'nothing-found'
	const because = signs.flatMap((sign) =>
		sign.since === today ? sign.because : [carriedId(sign, signs, today)],
	)
	return {
		state: holds.length > 0 ? 'held' : open,
		action: worst(signs),
		holds,
		because: [...new Set(because)],
		unasked,
	}
}
