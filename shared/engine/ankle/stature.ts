/**
 * The leg that a distance to the wall is seen against: a short leg reaches less far at the same
 * angle, so that distances are scaled to stature.
 */
import { isMinor } from '../facts/age.ts'
import { type Formula, over, quantity, times } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'

/** The share of stature that the lower leg has at this age. */
function shareKey({ player, visitDate }: Visit, protocol: Protocol): ThresholdKey {
	const years = ageYears(player.birthDate, visitDate)
	return years <= protocol.value('ankle.shankYoungToYears')
		? 'ankle.shankPerStatureYoung'
		: 'ankle.shankPerStatureAdult'
}
/** Lower leg, cm, by stature; undefined where stature was not measured. */
function shankOf(visit: Visit, protocol: Protocol): Formula | undefined {
	const { statureCm } = bodySize(visit)
	if (statureCm === undefined) return undefined
	return times(quantity(protocol.value(shareKey(visit, protocol))), quantity(statureCm, 1))
}
/**
 * Lower leg for the geometry of the lunge, cm: by stature, and an adult's usual one where that is
 * not known; undefined for a minor without a stature.
 */
export function shankCmOf(visit: Visit, protocol: Protocol): number | undefined {
	const known = shankOf(visit, protocol)?.value
	return known ?? (isMinor(visit, protocol) ? undefined : protocol.value('ankle.shankCm'))
}
/**
 * The distance, cm, below which an ankle counts as restricted: as it stands for adults, scaled to
 * the lower leg for minors; undefined for a minor without a stature.
 */
export function distanceCutOff(visit: Visit, protocol: Protocol): Formula | undefined {
	const cutOff = quantity(protocol.value('ankle.restrictedCm'), 1)
	if (!isMinor(visit, protocol)) return cutOff
	const shank = shankOf(visit, protocol)
	if (!shank) return undefined
	return over(times(cutOff, shank), quantity(protocol.value('ankle.shankCm'), 1))
}
