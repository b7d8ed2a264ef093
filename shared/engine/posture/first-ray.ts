/** The first ray and the big toe joint at its end. */
import { hasCondition } from '../conditions/query.ts'
import type { PostureSide } from '../findings/assessment.ts'
import { type Finding, findingOf, reading } from '../findings/finding.ts'
import { exactly, type Formula, plus, quantity, times } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { meanOf } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

/** Whether a condition of the big toe joint of this side is recorded and not past. */
const isJointPainful = (visit: Visit, side: Side): boolean =>
	hasCondition(visit, ['hallux-limitus', 'first-mtp-osteoarthritis'], { side })
/**
 * Free, functional, structural (only with a painful joint recorded) or grey; undefined where not
 * measured. Degrees. @param recordedOnly the standing test of this limb is not judged today
 */
export function firstMtpOf(
	visit: Visit,
	side: Side,
	recordedOnly: boolean,
	protocol: Protocol,
): PostureSide['firstMtp'] {
	const range = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)
	const jack = recordedOnly ? undefined : meanOf(visit.posture?.[side]?.jackTestDeg)
	if (range === undefined) return undefined
	if (range < protocol.value('posture.mtpStructuralDeg'))
		return isJointPainful(visit, side) ? 'structural-limit' : 'grey'
	if (jack !== undefined && jack < protocol.value('posture.jackDeg')) return 'functional-limit'
	if (range < protocol.value('posture.mtpFreeDeg')) return 'grey'
	return jack === undefined ? undefined : 'free'
}
/** The line by which interphalangeal dorsiflexion goes with the first MTP range, degrees. */
export const ipjLine = (mtpDeg: number, protocol: Protocol): Formula =>
	plus(
		exactly(protocol.value('posture.ipjIntercept')),
		times(exactly(protocol.value('posture.ipjSlope')), quantity(mtpDeg, 1)),
	)
/**
 * Interphalangeal dorsiflexion to expect from the first MTP range, degrees; undefined where the
 * line falls below nought.
 */
export function ipjOf(mtpDeg: number | undefined, protocol: Protocol): number | undefined {
	if (mtpDeg === undefined) return undefined
	const { value } = ipjLine(mtpDeg, protocol)
	return value < 0 ? undefined : value
}
/** The row that decided about the joint. */
function mtpKey(
	verdict: Exclude<PostureSide['firstMtp'], 'free' | undefined>,
	rangeDeg: number,
	protocol: Protocol,
): ThresholdKey {
	if (verdict === 'functional-limit') return 'posture.jackDeg'
	const aboveStructural = rangeDeg >= protocol.value('posture.mtpStructuralDeg')
	return verdict === 'grey' && aboveStructural ? 'posture.mtpFreeDeg' : 'posture.mtpStructuralDeg'
}
/** A finding where the big toe joint is not free. */
export function firstMtpFindings(
	visit: Visit,
	side: Side,
	{ firstMtp }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const rangeDeg = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)
	const jackDeg = meanOf(visit.posture?.[side]?.jackTestDeg)
	if (firstMtp === undefined || firstMtp === 'free' || rangeDeg === undefined) return []
	return [
		findingOf(
			firstMtp === 'grey'
				? state('posture.first-mtp-grey', { side })
				: state('posture.first-mtp', {
						side,
						verdict: firstMtp,
						free: rangeDeg >= protocol.value('posture.mtpFreeDeg'),
					}),
			{
				id: `posture.first-mtp.${side}`,
				side,
				level: firstMtp === 'grey' ? 'note' : 'advise',
				because: [
					reading('firstMtpDegNonWeightBearing', rangeDeg, 'deg', side),
					...(jackDeg === undefined ? [] : [reading('jackTestDeg', jackDeg, 'deg', side)]),
				],
				basis: protocol.basis('first MTP joint', mtpKey(firstMtp, rangeDeg, protocol)),
			},
		),
	]
}
/**
 * A finding where the first ray is worth a word; the hand test has poor agreement between examiners
 * (clinical sources disagree on its use).
 */
export function firstRayFindings(
	side: Side,
	{ firstRay }: PostureSide,
	protocol: Protocol,
): Finding[] {
	if (firstRay === undefined || firstRay === 'neutral') return []
	const excessMm = protocol.value('posture.firstRayExcessMm')
	return [
		findingOf(state('posture.first-ray', { side, firstRay, excessMm }), {
			side,
			level: 'note',
			because: [{ measure: 'firstRay', side, value: firstRay }],
			basis:
				firstRay === 'hypermobile'
					? protocol.basis('first ray, hypermobile', 'posture.firstRayExcessMm')
					: {
							rule: `first ray, ${firstRay}`,
							source: 'common practice, no source',
							strength: 'practice',
						},
		}),
	]
}
