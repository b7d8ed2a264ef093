/** What every room, screen and page asks of the gate before it proposes anything. */
import type { Gate, Hold, Holdable } from '../findings/gate.ts'
import { bothSides } from '../visit/sides.ts'
import type { Side } from '../visit/visit.ts'

/** Nothing held, nothing asked: for a caller that has no gate, such as an older record. */
export const openGate: Gate = {
	person: { state: 'nothing-found', action: 'proceed', holds: [], because: [], unasked: [] },
	left: { state: 'nothing-found', action: 'proceed', holds: [], because: [], unasked: [] },
	right: { state: 'nothing-found', action: 'proceed', holds: [], because: [], unasked: [] },
}
/**
 * The holds on something: those of the player as a whole and, where a side is named, of that limb;
 * without a side, of either limb.
 */
export function holdsOn(gate: Gate, what: Holdable, side?: Side): Hold[] {
	const limbs = side === undefined ? bothSides : [side]
	return [gate.person, ...limbs.map((limb) => gate[limb])].flatMap(({ holds }) =>
		holds.filter((hold) => hold.what === what),
	)
}
/** Whether something is held: for the player, or for this limb (without a side: for either). */
export const isHeld = (gate: Gate, what: Holdable, side?: Side): boolean =>
	holdsOn(gate, what, side).length > 0
