/** Pitch of each pair the player owns, and the difference between any two. */
import type { PairPitch } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { netPitchChange, pitchDeg } from './pitch.ts'

/** Mean of the two feet, mm; undefined where neither was measured. */
const ofBoth = (visit: Visit, field: 'heelToBallMm' | 'heelToToeMm') =>
	meanOf(bothSides.flatMap((side) => meanOf(visit.feet?.[side]?.[field]) ?? []))

/**
 * The player's own heel-to-ball length, mm; failing that, the usual share of foot length; undefined
 * with no foot measured.
 */
export function ballLengthOf(visit: Visit, protocol: Protocol): number | undefined {
	const toe = ofBoth(visit, 'heelToToeMm')
	return (
		ofBoth(visit, 'heelToBallMm') ??
		(toe === undefined ? undefined : toe * protocol.value('ankle.ballPerFoot'))
	)
}
/** Heel centre to ball, mm: the shorter lever of a raise; undefined without a foot length. */
export function heelCentreLengthOf(visit: Visit, protocol: Protocol): number | undefined {
	const toe = ofBoth(visit, 'heelToToeMm')
	return toe === undefined ? undefined : toe * protocol.value('ankle.heelCentrePerFoot')
}
/** Any two pairs with a known offset, from the higher heel to the lower; degrees. */
export function pairPitches(visit: Visit, protocol: Protocol): PairPitch[] {
	const length = ballLengthOf(visit, protocol)
	if (length === undefined) return []
	const known = (visit.footwear ?? []).flatMap(
		({ id, heelToForefootOffsetMm: offsetMm, heelLiftMm: liftMm = 0 }) =>
			offsetMm === undefined ? [] : [{ id, offsetMm, liftMm }],
	)
	return known.flatMap((one, index) =>
		known.slice(index + 1).map((other) => {
			const change = netPitchChange(one, other, length),
				[from, to] = change >= 0 ? [one, other] : [other, one]
			return {
				from: from.id,
				to: to.id,
				fromDeg: pitchDeg(from.offsetMm + from.liftMm, length),
				toDeg: pitchDeg(to.offsetMm + to.liftMm, length),
				changeDeg: Math.abs(change),
			}
		}),
	)
}
