/**
 * The heel-raise proposal: an estimate for the clinician to edit, never above the boot limit in
 * use.
 */

import { hasCondition } from '../conditions/query.ts'
import type { AnkleSide, PerSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, quantity, times } from '../findings/formula.ts'
import { present } from '../plain/present.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

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
	/** Part of the correction does not fit below the boot limit. */
	capped: boolean
}
/** What trials and practice say for each reason. */
export const evidence: Partial<Record<ThresholdKey, string>> = {
	'ankle.raiseBlockMm':
		'No trial found for a front block. Low and Dixon 2015/16: 10 mm in football boots, n 9, no ' +
		'group effect; they advise against routine use',
	'ankle.raiseApophysitisMm':
		'Wiegerinck 2016, n 101: raise better than waiting at 6 weeks; no difference at 3 months ' +
		'(the last from memory)',
	'ankle.raiseRestrictedMm':
		'No published validation. Low and Dixon 2015/16: 10 mm in football boots, n 9, no group ' +
		'effect; they advise against routine use',
	'posture.legLengthShareMax':
		'Trial PMC6417033, n 42: correcting 70 % of the difference eased back pain (adults over 35 ' +
		'at work, not players)',
}
/** The most of a leg-length difference that is corrected, mm. */
export const correctionOf = (differenceMm: number, protocol: Protocol): Formula =>
	times(quantity(differenceMm, 1), exactly(protocol.value('posture.legLengthShareMax')))
/**
 * Leg-length correction on the shorter side, mm: only where a reason is recorded and the difference
 * is beyond test error;
 * below the 'consider' limit, and in a growing player, only with symptoms.
 */
function legLengthCorrectionMm(visit: Visit, protocol: Protocol): number {
	const { legLengthDifferenceMm: difference, shorterLeg, legLengthReason } = visit.body ?? {}
	if (
		difference === undefined ||
		!shorterLeg ||
		!legLengthReason ||
		difference < protocol.value('posture.legLengthRecordMm') ||
		difference >= protocol.value('posture.legLengthReferMm')
	)
		return 0
	const growing =
		ageYears(visit.player.birthDate, visit.visitDate) < protocol.value('posture.adultFromYears')
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
	protocol: Protocol,
): ThresholdKey | undefined {
	const blocked = bothSides.some((side) => sides[side].limitedBy === 'anterior-block')
	const restricted = bothSides.some((side) => sides[side].band === 'restricted')
	const growingHeel = hasCondition(visit, ['calcaneal-apophysitis'], { when: 'current' })
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
 * The proposal, or undefined without a reason. Both feet get the same height unless a leg-length
 * reason is recorded.
 */
export function proposeRaise(
	visit: Visit,
	sides: PerSide<AnkleSide>,
	protocol: Protocol,
): Raise | undefined {
	const key = reasonFor(visit, sides, protocol)
	const correctionMm = rounded(legLengthCorrectionMm(visit, protocol), 1)
	if (!key && correctionMm === 0) return undefined
	const limit = Math.min(protocol.value('ankle.raiseWarnMm'), protocol.value('ankle.raiseStopMm'))
	const baseMm = key ? Math.min(protocol.value(key), limit) : 0
	const heelRaiseMm = perSide((side) =>
		side === visit.body?.shorterLeg ? rounded(Math.min(limit, baseMm + correctionMm), 1) : baseMm,
	)
	const offsetMm = key
		? { min: baseMm, max: Math.max(baseMm, protocol.value('ankle.offsetMaxMm')) }
		: undefined
	return present({
		heelRaiseMm,
		offsetMm,
		key: key ?? 'posture.legLengthShareMax',
		baseMm,
		correctionMm,
		oneSided: heelRaiseMm.left !== heelRaiseMm.right,
		capped: baseMm + correctionMm > limit,
	})
}
/** What the proposal rests on: where it came from, and whether the leg length is part of it. */
export const raiseBasis = ({ oneSided, key }: Raise, protocol: Protocol): Basis =>
	protocol.basis(
		oneSided ? 'heel raise with leg-length correction' : 'heel raise to both feet',
		key,
	)
/** The proposal as the clinician reads it; nothing without one. */
export function raiseFindings(
	visit: Visit,
	raise: Raise | undefined,
	protocol: Protocol,
): Finding[] {
	if (!raise) return []
	const { heelRaiseMm, oneSided, capped } = raise
	const shorter = oneSided ? visit.body?.shorterLeg : undefined
	return [
		findingOf(state('ankle.heel-raise', present({ mm: heelRaiseMm, shorter, capped })), {
			side: 'both',
			level: 'advise',
			because: oneSided
				? bothSides.map((side) => reading('heelRaiseMm', heelRaiseMm[side], 'mm', side))
				: [reading('heelRaiseMm', heelRaiseMm.left, 'mm')],
			basis: raiseBasis(raise, protocol),
		}),
	]
}
