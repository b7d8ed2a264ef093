/**
 * The raise that this room alone would wish for, in a flat boot and never above its limit. What is
 * proposed in each pair is worked out by the raise room.
 */

import { hasCondition } from '../conditions/query.ts'
import { isMinor } from '../facts/age.ts'
import { isHeld } from '../facts/held.ts'
import type { AnkleSide, Gate, PerSide } from '../findings/assessment.ts'
import { exactly, type Formula, quantity, times } from '../findings/formula.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

export interface Raise {
	heelRaiseMm: PerSide<number>
	offsetMm?: { min: number; max: number }
	/** The row that gave the height. */
	key: ThresholdKey
	/** Height for both feet before any leg-length correction, mm. */
	baseMm: number
	/** Leg-length correction wanted on the shorter side, mm. */
	correctionMm: number
	oneSided: boolean
}
/** The most of a leg-length difference that is corrected, mm. */
export const correctionOf = (differenceMm: number, protocol: Protocol): Formula =>
	times(quantity(differenceMm, 1), exactly(protocol.value('posture.legLengthShareMax')))
/**
 * Leg-length correction on the shorter side, mm: for a difference beyond test error and short of
 * referral; below the 'consider' limit, and in a growing player, only with symptoms.
 */
function legLengthCorrectionMm(visit: Visit, protocol: Protocol): number {
	const { legLengthDifferenceMm: difference, shorterLeg } = visit.body ?? {}
	if (
		difference === undefined ||
		!shorterLeg ||
		difference < protocol.value('posture.legLengthRecordMm') ||
		difference >= protocol.value('posture.legLengthReferMm')
	)
		return 0
	const growing = isMinor(visit, protocol)
	if (
		!legLengthSymptomatic(visit) &&
		(growing || difference < protocol.value('posture.legLengthConsiderMm'))
	)
		return 0
	return correctionOf(difference, protocol).value
}
/** The reason for a raise to both feet that asks for most; undefined where there is none. */
function reasonFor(
	visit: Visit,
	sides: PerSide<AnkleSide>,
	gate: Gate,
	protocol: Protocol,
): ThresholdKey | undefined {
	const waits = isHeld(gate, 'weight') || isHeld(gate, 'insert')
	// a raise closes the back of the ankle: none where that is what hurts
	if (waits || hasCondition(visit, ['posterior-ankle-impingement'])) return undefined
	const blocked = bothSides.some((side) => sides[side].limitedBy === 'anterior-block')
	const restricted = bothSides.some((side) => sides[side].band === 'restricted')
	const growingHeel =
		isMinor(visit, protocol) && hasCondition(visit, ['calcaneal-apophysitis'], { when: 'current' })
	const reasons: [ThresholdKey, boolean][] = [
		['ankle.raiseBlockMm', blocked],
		['ankle.raiseApophysitisMm', growingHeel],
		['ankle.raiseRestrictedMm', restricted],
	]
	return reasons
		.flatMap(([key, holds]) => (holds ? [key] : []))
		.sort((key, other) => protocol.value(other) - protocol.value(key))[0]
}
/**
 * What this room would give in a flat boot, or undefined without a reason or where raises are held.
 * Both feet get the same height; a leg-length correction comes on top of it on the shorter side,
 * and what is for both gives way first.
 */
export function proposeRaise(
	visit: Visit,
	sides: PerSide<AnkleSide>,
	gate: Gate,
	protocol: Protocol,
): Raise | undefined {
	if (isHeld(gate, 'raise')) return undefined
	const key = reasonFor(visit, sides, gate, protocol)
	const limit = Math.min(protocol.value('ankle.raiseWarnMm'), protocol.value('ankle.raiseStopMm'))
	const fullMm = isHeld(gate, 'weight') ? 0 : rounded(legLengthCorrectionMm(visit, protocol), 1)
	const correctionMm = Math.min(fullMm, limit)
	if (!key && correctionMm === 0) return undefined
	const leftMm = key ? Math.min(protocol.value(key), rounded(limit - correctionMm, 1)) : 0
	const baseMm = leftMm < protocol.value('raise.leastMm') ? 0 : leftMm
	const heelRaiseMm = perSide((side) =>
		side === visit.body?.shorterLeg ? rounded(baseMm + correctionMm, 1) : baseMm,
	)
	const wishMm = key ? protocol.value(key) : 0
	const offsetMm = key
		? { min: wishMm, max: Math.max(wishMm, protocol.value('ankle.offsetMaxMm')) }
		: undefined
	return present({
		heelRaiseMm,
		offsetMm,
		key: key ?? 'posture.legLengthShareMax',
		baseMm,
		correctionMm,
		oneSided: heelRaiseMm.left !== heelRaiseMm.right,
	})
}
/** What the proposal rests on: where it came from, and whether the leg length is part of it. */
export const raiseBasis = ({ oneSided, key }: Raise, protocol: Protocol): Basis =>
	protocol.basis(
		oneSided ? 'heel raise with leg-length correction' : 'heel raise to both feet',
		key,
	)
