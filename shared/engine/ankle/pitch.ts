/**
 * Pitch of the foot in a shoe: heights in mm, angles in degrees. Check values: trigonometry tan =
 * height / length.
 */
import {
	arcSineDeg,
	arcTangentDeg,
	exactly,
	type Formula,
	minus,
	over,
	plus,
	quantity,
	times,
} from '../findings/formula.ts'

const degrees = 180 / Math.PI

interface HeelHeights {
	offsetMm: number
	liftMm?: number
}
/** @throws RangeError when a length is not positive */
function requireLength(ballLengthMm: number): void {
	if (!(ballLengthMm > 0))
		throw new RangeError(
			`heel to ball: ${ballLengthMm} mm is not a length, give a positive number of mm`,
		)
}
const angleOf = (height: Formula, ballLengthMm: number): Formula => {
	requireLength(ballLengthMm)
	return arcTangentDeg(over(height, quantity(ballLengthMm, 1)))
}
/**
 * Angle of a heel height over a heel-to-ball length. @throws RangeError when the length is not
 * positive
 */
export const pitch = (heightMm: number, ballLengthMm: number): Formula =>
	angleOf(quantity(heightMm, 1), ballLengthMm)
/** The same angle, degrees. @throws RangeError when the length is not positive */
export const pitchDeg = (heightMm: number, ballLengthMm: number): number =>
	pitch(heightMm, ballLengthMm).value
/**
 * The heel height (mm) that gives a pitch. @throws RangeError when the length is not positive
 * @internal
 */
export function heightForPitch(deg: number, ballLengthMm: number): number {
	requireLength(ballLengthMm)
	return ballLengthMm * Math.tan(deg / degrees)
}
/**
 * What changing from pair A to pair B asks of the ankle, degrees: positive is more dorsiflexion
 * asked in B. @throws RangeError when the length is not positive
 */
export const netPitchChange = (a: HeelHeights, b: HeelHeights, ballLengthMm: number): Formula => {
	const height = ({ offsetMm, liftMm = 0 }: HeelHeights) =>
		quantity(plus(quantity(offsetMm), quantity(liftMm)).value, 1)
	return angleOf(minus(height(a), height(b)), ballLengthMm)
}
/**
 * Lunge angle (degrees) from toe-to-wall distance, ankle-to-toe, knee front and shank, all cm.
 * Plausibility only.
 */
export const lungeGeometryDeg = (
	lungeCm: number,
	toeCm: number,
	kneeCm: number,
	shankCm: number,
): Formula =>
	arcSineDeg(
		over(minus(plus(quantity(lungeCm), quantity(toeCm)), quantity(kneeCm)), quantity(shankCm)),
	)
/** What a pitch comes to in the ankle, degrees: the share of it that was seen. */
export const transferred = (pitchedDeg: number, transfer: number): Formula =>
	times(quantity(pitchedDeg), exactly(transfer))
