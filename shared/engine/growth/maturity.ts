/**
 * Maturity equations. Age in decimal years, lengths in cm, mass in kg; results in years from peak
 * height velocity, negative before it. No limits are applied here: see estimate.ts.
 */
export interface Sized {
	ageYears: number
	statureCm: number
	sittingHeightCm: number
	massKg: number
}

/**
 * Mirwald et al., Med Sci Sports Exerc 2002;34(4):689-694, boys. The last term is (mass / stature)
 * x 100.
 */
export function mirwaldBoys({
	ageYears: a,
	statureCm: h,
	sittingHeightCm: sh,
	massKg,
}: Sized): number {
	const leg = h - sh
	return (
		-9.236 +
		0.0002708 * leg * sh -
		0.001663 * a * leg +
		0.007216 * a * sh +
		0.02292 * ((massKg / h) * 100)
	)
}
/** Mirwald et al. 2002, girls. */
export function mirwaldGirls({
	ageYears: a,
	statureCm: h,
	sittingHeightCm: sh,
	massKg,
}: Sized): number {
	const leg = h - sh
	return (
		-9.376 +
		0.0001882 * leg * sh +
		0.0022 * a * leg +
		0.005841 * a * sh -
		0.002658 * a * massKg +
		0.07693 * ((massKg / h) * 100)
	)
}
/** Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764, boys, with sitting height. */
export const mooreSittingBoys = (ageYears: number, sittingHeightCm: number): number =>
	-8.128741 + 0.0070346 * ageYears * sittingHeightCm
/** Moore et al. 2015, boys, from stature alone. */
export const mooreBoys = (ageYears: number, statureCm: number): number =>
	-7.999994 + 0.0036124 * ageYears * statureCm
/** Moore et al. 2015, girls, from stature; there is no girls' equation with sitting height. */
export const mooreGirls = (ageYears: number, statureCm: number): number =>
	-7.709133 + 0.0042232 * ageYears * statureCm
/**
 * Maturity ratio (age / age at peak height velocity), boys only: Fransen et al., Pediatr Exerc Sci
 * 2018;30(2):296-307.
 */
export function fransenRatioBoys({
	ageYears: a,
	statureCm: h,
	sittingHeightCm,
	massKg: m,
}: Sized): number {
	const leg = h - sittingHeightCm
	return (
		6.986547255416 +
		0.115802846632 * a +
		0.001450825199 * a ** 2 +
		0.004518400406 * m -
		0.000034086447 * m ** 2 -
		0.151951447289 * h +
		0.000932836659 * h ** 2 -
		0.000001656585 * h ** 3 +
		0.032198263733 * leg -
		0.000269025264 * leg ** 2 -
		0.000760897942 * h * a
	)
}
