/**
 * The heel-raise proposal: an estimate for the clinician to edit, never above the boot limit in
 * use.
 */

import type { AnkleSide, PerSide } from '../findings/assessment.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
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
/**
 * Leg-length correction on the shorter side, mm: only where a reason is recorded and the difference
 * is beyond test error;
 * below the 'consider' limit, and in a growing player, only with symptoms.
 */
export function legLengthCorrectionMm(visit: Visit, protocol: Protocol): number {
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
	return difference * protocol.value('posture.legLengthShareMax')
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
	const reasons: [ThresholdKey, boolean][] = [
		['ankle.raiseBlockMm', bothSides.some((side) => sides[side].limitedBy === 'anterior-block')],
		[
			'ankle.raiseApophysitisMm',
			(visit.conditions ?? []).some(
				(condition) =>
					condition.condition === 'calcaneal-apophysitis' && condition.status === 'current',
			),
		],
		['ankle.raiseRestrictedMm', bothSides.some((side) => sides[side].band === 'restricted')],
	]
	const key = reasons
		.flatMap(([one, holds]) => (holds ? [one] : []))
		.sort((a, b) => protocol.value(b) - protocol.value(a))[0]
	const correctionMm = rounded(legLengthCorrectionMm(visit, protocol), 1)
	if (!key && correctionMm === 0) return undefined
	const limit = Math.min(protocol.value('ankle.raiseWarnMm'), protocol.value('ankle.raiseStopMm'))
	const baseMm = key ? Math.min(protocol.value(key), limit) : 0
	const heelRaiseMm = perSide((side) =>
		side === visit.body?.shorterLeg ? rounded(Math.min(limit, baseMm + correctionMm), 1) : baseMm,
	)
	return {
		heelRaiseMm,
		...(key
			? { offsetMm: { min: baseMm, max: Math.max(baseMm, protocol.value('ankle.offsetMaxMm')) } }
			: {}),
		key: key ?? 'posture.legLengthShareMax',
		baseMm,
		correctionMm,
		oneSided: heelRaiseMm.left !== heelRaiseMm.right,
		capped: baseMm + correctionMm > limit,
	}
}
