/**
 * Pitch of the foot in a shoe: heights in mm, angles in degrees. Check values: trigonometry tan =
 * height / length.
 */
const degrees = 180 / Math.PI

interface HeelHeights {
	offsetMm: number
	liftMm?: number
}
/**
 * Angle of a heel height over a heel-to-ball length. @throws RangeError when the length is not
 * positive
 */
export function pitchDeg(heightMm: number, ballLengthMm: number): number {
	if (!(ballLengthMm > 0))
		throw new RangeError(
			`heel to ball: ${ballLengthMm} mm is not a length, give a positive number of mm`,
		)
	return Math.atan(heightMm / ballLengthMm) * degrees
}
/**
 * The heel height (mm) that gives a pitch. @throws RangeError when the length is not positive
 * @internal
 */
export function heightForPitch(deg: number, ballLengthMm: number): number {
	if (!(ballLengthMm > 0))
		throw new RangeError(
			`heel to ball: ${ballLengthMm} mm is not a length, give a positive number of mm`,
		)
	return ballLengthMm * Math.tan(deg / degrees)
}
/**
 * What changing from pair A to pair B asks of the ankle, degrees: positive is more dorsiflexion
 * asked in B.
 */
export function netPitchChange(a: HeelHeights, b: HeelHeights, ballLengthMm: number): number {
	return pitchDeg(a.offsetMm + (a.liftMm ?? 0) - b.offsetMm - (b.liftMm ?? 0), ballLengthMm)
}
/**
 * Lunge angle (degrees) from toe-to-wall distance, ankle-to-toe, knee front and shank, all cm.
 * Plausibility only.
 */
export function lungeGeometryDeg(
	lungeCm: number,
	toeCm: number,
	kneeCm: number,
	shankCm: number,
): number {
	return Math.asin(Math.min(1, Math.max(-1, (lungeCm + toeCm - kneeCm) / shankCm))) * degrees
}
