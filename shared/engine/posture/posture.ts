/**
 * Posture room: foot posture index, first MTP joint, first ray, navicular drop, heel rises,
 * Beighton score, leg length.
 */
import { isHeld } from '../facts/held.ts'
import { isOnlyRecorded, type Limbs } from '../facts/limbs.ts'
import type { PerSide, PostureResult, PostureSide } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { beightonFindings, beightonOf } from './beighton.ts'
import { postureChanges, riseFindings } from './changes.ts'
import { firstMtpFindings, firstMtpOf, firstRayFindings, ipjOf } from './first-ray.ts'
import {
	bandFindings,
	fpiBandOf,
	fpiOf,
	indexDifferenceFindings,
	lowIndexFindings,
	minorIndexFindings,
	navicularFindings,
	schemeOf,
} from './foot-posture.ts'
import { childRiseFindings, riseGapFindings, riseNormFindings } from './heel-rises.ts'
import { legLengthFindings, legLengthOf } from './leg-length.ts'
import { recordedOnlyFindings } from './recorded-only.ts'
import { postureWorkings } from './workings.ts'

/** One foot as recorded; what was not measured is absent. */
function postureSide(
	visit: Visit,
	side: Side,
	recordedOnly: boolean,
	protocol: Protocol,
): PostureSide {
	const read = visit.posture?.[side]
	const fpi = fpiOf(read?.fpi6)
	return present({
		fpi,
		fpiBand: fpi === undefined ? undefined : fpiBandOf(fpi, protocol),
		firstRay: read?.firstRay,
		firstMtp: firstMtpOf(visit, side, recordedOnly, protocol),
		navicularDropMm: meanOf(read?.navicularDropMm),
		heelRises: read?.heelRises,
		ipjEstimateDeg: ipjOf(meanOf(read?.firstMtpDegNonWeightBearing), protocol),
	})
}
/** Heel rises as they are judged: none of a limb that is only recorded. */
const judged = (foot: PostureSide, recordedOnly: boolean): PostureSide => {
	const { heelRises, ...rest } = foot
	return recordedOnly || heelRises === undefined ? rest : foot
}
/** Both feet as recorded alone, without what is said of them. @param limbs as `posture` */
export const postureSides = (
	visit: Visit,
	protocol: Protocol,
	limbs: Limbs = {},
): PerSide<PostureSide> =>
	perSide((side) => postureSide(visit, side, isOnlyRecorded(limbs, side), protocol))
/**
 * Posture findings of a visit. Crossing a band alone does not warrant an insert. @param limbs which
 * limbs are acutely injured or must not be tested: their heel rises are recorded, compared with
 * nothing, and a leg-length correction is left out where raises are held
 */
export function posture(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	limbs: Limbs = {},
): PostureResult {
	const recordedOnly = (side: Side): boolean => isOnlyRecorded(limbs, side)
	const sides = postureSides(visit, protocol, limbs)
	const compared = perSide((side) => judged(sides[side], recordedOnly(side)))
	const changes = postureChanges(visit, earlier, protocol, recordedOnly)
	const raiseHeld = limbs.gate !== undefined && isHeld(limbs.gate, 'raise')
	const result = present({
		...sides,
		fpiScheme: schemeOf(protocol),
		beighton: beightonOf(visit, protocol),
		legLength: legLengthOf(visit, protocol, raiseHeld),
		changes,
		findings: [
			...bothSides.flatMap((side) => [
				...bandFindings(side, sides[side], protocol),
				...minorIndexFindings(visit, side, sides[side], protocol),
				...firstMtpFindings(visit, side, sides[side], protocol),
				...firstRayFindings(side, sides[side], protocol),
				...lowIndexFindings(visit, side, sides[side], protocol),
				...navicularFindings(side, sides[side], protocol),
				...riseNormFindings(visit, side, compared[side], protocol),
				...childRiseFindings(visit, side, compared[side], protocol),
				...(recordedOnly(side) ? recordedOnlyFindings(visit, side) : []),
			]),
			...indexDifferenceFindings(sides, protocol),
			...riseGapFindings(compared, protocol),
			...beightonFindings(visit, protocol),
			...legLengthFindings(visit, protocol, raiseHeld),
			...riseFindings(changes, protocol),
		],
	})
	return { ...result, workings: postureWorkings(visit, result, compared, protocol) }
}
