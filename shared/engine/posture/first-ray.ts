/** The first ray and the big toe joint at its end. */
import type { PostureSide } from '../findings/assessment.ts'
import { type Finding, reading, sayFinding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { meanOf } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'

const painfulJoints: readonly string[] = ['hallux-limitus', 'first-mtp-osteoarthritis']
/** Whether a condition of the big toe joint of this side is recorded and not past. */
const isJointPainful = (visit: Visit, side: Side): boolean =>
	(visit.conditions ?? []).some(
		(condition) =>
			painfulJoints.includes(condition.condition) &&
			condition.status !== 'past' &&
			(condition.side === side || condition.side === 'both'),
	)
/**
 * Free, functional, structural (only with a painful joint recorded) or grey; undefined where not
 * measured. Degrees.
 */
export function firstMtpOf(visit: Visit, side: Side, protocol: Protocol): PostureSide['firstMtp'] {
	const range = meanOf(visit.posture?.[side]?.firstMtpDegNonWeightBearing)
	const jack = meanOf(visit.posture?.[side]?.jackTestDeg)
	if (range === undefined) return undefined
	if (range < protocol.value('posture.mtpStructuralDeg'))
		return isJointPainful(visit, side) ? 'structural-limit' : 'grey'
	if (jack !== undefined && jack < protocol.value('posture.jackDeg')) return 'functional-limit'
	if (range < protocol.value('posture.mtpFreeDeg')) return 'grey'
	return jack === undefined ? undefined : 'free'
}
/**
 * Interphalangeal dorsiflexion to expect from the first MTP range, degrees; undefined where the
 * line falls below nought.
 */
export function ipjOf(mtpDeg: number | undefined, protocol: Protocol): number | undefined {
	if (mtpDeg === undefined) return undefined
	const ipjDeg =
		protocol.value('posture.ipjIntercept') + protocol.value('posture.ipjSlope') * mtpDeg
	return ipjDeg < 0 ? undefined : ipjDeg
}
const mtpWords = {
	'functional-limit': 'moves freely off the ground but is held when standing (functional limit)',
	'structural-limit':
		'is limited off the ground as well, with a painful joint recorded (structural limit)',
	grey: 'is in the grey zone: neither clearly free nor clearly limited',
} as const

/** The row that decided about the joint. */
function mtpKey(
	verdict: keyof typeof mtpWords,
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
		sayFinding({
			topic: 'posture',
			rule: 'first-mtp',
			side,
			level: firstMtp === 'grey' ? 'note' : 'advise',
			says: `The ${side} big toe joint ${mtpWords[firstMtp]}.`,
			because: [
				reading('off the ground', rangeDeg, 'deg'),
				...(jackDeg === undefined ? [] : [reading('standing', jackDeg, 'deg')]),
			],
			basis: protocol.basis('first MTP joint', mtpKey(firstMtp, rangeDeg, protocol)),
		}),
	]
}
/**
 * First-ray readings worth a word; the hand test has poor agreement between examiners (clinical
 * sources disagree on its use).
 */
const rayWords: Partial<Record<string, string>> = {
	plantarflexed: 'look for pressure under the first joint and keep studs clear of it',
	dorsiflexed: 'look for load moving to the second ray',
	hypermobile:
		'this counts as excessive only above {mm} mm of upward movement with symptoms (expert opinion)',
}
/** A finding where the first ray is worth a word. */
export function firstRayFindings(
	side: Side,
	{ firstRay }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const words = firstRay === undefined ? undefined : rayWords[firstRay]
	if (firstRay === undefined || words === undefined) return []
	const excessMm = protocol.value('posture.firstRayExcessMm')
	return [
		sayFinding({
			topic: 'posture',
			rule: 'first-ray',
			side,
			level: 'note',
			says:
				`The ${side} first ray is ${firstRay}: ${words.replace('{mm}', String(excessMm))}. The ` +
				'hand test has poor agreement between examiners.',
			because: [{ measure: 'first ray', value: firstRay }],
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
