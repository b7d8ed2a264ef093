/**
 * Amounts of an insert: post heights, shell thickness, the limit of a first lift, dome position.
 * Lengths in mm, angles in degrees.
 */
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { ShellUnknown } from '../words/en/insert-elements.ts'

/** From this angle on a wedge is no post any more, degrees. */
export const steepestPostDeg = 45
/**
 * Height of a wedge over a width: h = W tan(theta). @throws RangeError for a width that is not
 * positive or an angle outside 0 up to 45
 */
export function postHeightMm(widthMm: number, angleDeg: number): number {
	if (!(widthMm > 0))
		throw new RangeError(`heel width: ${widthMm} mm is not a width, give a positive number of mm`)
	if (!(angleDeg >= 0 && angleDeg < steepestPostDeg))
		throw new RangeError(`post angle: ${angleDeg} degrees, give 0 up to ${steepestPostDeg}`)
	return widthMm * Math.tan((angleDeg * Math.PI) / 180)
}
/**
 * Expected change of peak rearfoot eversion for a medial post: negative is less eversion. Small,
 * and comfort is the aim.
 */
export const eversionChangeDeg = (postDeg: number, protocol: Protocol): number =>
	-postDeg * protocol.value('insert.eversionPerPostDeg')

type Shell = { key: ThresholdKey; mm: number } | { unknown: ShellUnknown }
/**
 * Polypropylene thickness by foot posture index and body mass. The source leaves FPI 0, and FPI
 * below 0 at exactly the limit mass, undefined: then nothing is given.
 */
export function shellThickness(
	fpi: number | undefined,
	massKg: number | undefined,
	adult: boolean,
	protocol: Protocol,
): Shell {
	const limitKg = protocol.value('insert.shellMassKg')
	const given = (key: ThresholdKey): Shell => ({ key, mm: protocol.value(key) })
	const notGiven = (unknown: ShellUnknown): Shell => ({ unknown })
	if (massKg === undefined) return notGiven('mass-not-measured')
	if (!adult && massKg < protocol.value('insert.childBelowKg')) return given('insert.shellChildMm')
	if (fpi === undefined) return notGiven('posture-not-measured')
	if (fpi === 0) return notGiven('posture-zero')
	if (fpi > 0)
		return given(massKg < limitKg ? 'insert.shellPronatedLightMm' : 'insert.shellPronatedHeavyMm')
	if (massKg === limitKg) return notGiven('supinated-at-limit')
	return given(massKg < limitKg ? 'insert.shellSupinatedLightMm' : 'insert.shellSupinatedHeavyMm')
}
/**
 * Heilig's upper limit for a first lift: L < SBU / (D + C). @throws RangeError where D + C is not
 * positive
 * @internal
 */
export function heiligLimitMm(
	unlevelMm: number,
	durationScore: number,
	compensationScore: number,
): number {
	if (!(durationScore + compensationScore > 0))
		throw new RangeError(
			`duration ${durationScore} and compensation ${compensationScore}: their sum must be above 0`,
		)
	return unlevelMm / (durationScore + compensationScore)
}
/** Distance of the dome's distal edge from the heel: behind the line of the heads by a margin. */
export const domeEdgeMm = (heelToBallMm: number, behindHeadsMm: number): number =>
	heelToBallMm - behindHeadsMm
