/**
 * Posture room: foot posture index, first MTP joint, first ray, navicular drop, heel rises,
 * Beighton score, leg length.
 */
import type { PostureResult, PostureSide } from '../findings/assessment.ts'
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
import { riseGapFindings, riseNormFindings } from './heel-rises.ts'
import { legLengthFindings, legLengthOf } from './leg-length.ts'
import { postureWorkings } from './workings.ts'

/** One foot as recorded; what was not measured is absent. */
function postureSide(visit: Visit, side: Side, protocol: Protocol): PostureSide {
	const read = visit.posture?.[side]
	const fpi = fpiOf(read?.fpi6)
	return present({
		fpi,
		fpiBand: fpi === undefined ? undefined : fpiBandOf(fpi, protocol),
		firstRay: read?.firstRay,
		firstMtp: firstMtpOf(visit, side, protocol),
		navicularDropMm: meanOf(read?.navicularDropMm),
		heelRises: read?.heelRises,
		ipjEstimateDeg: ipjOf(meanOf(read?.firstMtpDegNonWeightBearing), protocol),
	})
}
/** Posture findings of a visit. Crossing a band alone does not warrant an insert. */
export function posture(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): PostureResult {
	const sides = perSide((side) => postureSide(visit, side, protocol))
	const changes = postureChanges(visit, earlier, protocol)
	const result = present({
		...sides,
		fpiScheme: schemeOf(protocol),
		beighton: beightonOf(visit, protocol),
		legLength: legLengthOf(visit, protocol),
		changes,
		findings: [
			...bothSides.flatMap((side) => [
				...bandFindings(side, sides[side], protocol),
				...minorIndexFindings(visit, side, sides[side], protocol),
				...firstMtpFindings(visit, side, sides[side], protocol),
				...firstRayFindings(side, sides[side], protocol),
				...lowIndexFindings(visit, side, sides[side], protocol),
				...navicularFindings(side, sides[side], protocol),
				...riseNormFindings(visit, side, sides[side], protocol),
			]),
			...indexDifferenceFindings(sides, protocol),
			...riseGapFindings(sides, protocol),
			...beightonFindings(visit, protocol),
			...legLengthFindings(visit, protocol),
			...riseFindings(changes, protocol),
		],
	})
	return { ...result, workings: postureWorkings(visit, result, protocol) }
}
