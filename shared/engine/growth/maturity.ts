/**
 * Maturity equations. Age in decimal years, lengths in cm, mass in kg; results in years from peak
 * height velocity, negative before it. No limits are applied here: see estimate.ts.
 */
import {
	cubed,
	equation,
	exactly,
	type Formula,
	inNumbers,
	minus,
	over,
	plus,
	quantity,
	squared,
	times,
} from '../findings/formula.ts'
import { need } from '../plain/need.ts'

type Sex = 'male' | 'female'
interface Sized {
	ageYears: number
	statureCm: number
	sittingHeightCm: number
	massKg: number
}
/** What is known of a player: an equation asks only for what stands in it. */
type Known = Pick<Sized, 'ageYears'> & Partial<Sized>

const age = ({ ageYears }: Known) => quantity(ageYears, 4)
const stature = ({ statureCm }: Known) => quantity(need(statureCm, 'stature'), 1)
const sittingHeight = ({ sittingHeightCm }: Known) =>
	quantity(need(sittingHeightCm, 'sitting height'), 1)
const mass = ({ massKg }: Known) => quantity(need(massKg, 'body mass'), 1)
const legLength = (known: Known) => minus(stature(known), sittingHeight(known))
const leg = (known: Known) => quantity(legLength(known).value, 1)
const massToStature = (known: Known) => times(over(mass(known), stature(known)), exactly(100))
const massPerStature = (known: Known) => quantity(massToStature(known).value)

type Equation = (known: Known) => Formula
/**
 * Mirwald et al., Med Sci Sports Exerc 2002;34(4):689-694. The last term is (mass / stature) x
 * 100.
 */
const mirwald: Record<Sex, Equation> = {
	male: (known) =>
		plus(
			exactly(-9.236),
			times(exactly(0.0002708), leg(known), sittingHeight(known)),
			times(exactly(-0.001663), age(known), leg(known)),
			times(exactly(0.007216), age(known), sittingHeight(known)),
			times(exactly(0.02292), massPerStature(known)),
		),
	female: (known) =>
		plus(
			exactly(-9.376),
			times(exactly(0.0001882), leg(known), sittingHeight(known)),
			times(exactly(0.0022), age(known), leg(known)),
			times(exactly(0.005841), age(known), sittingHeight(known)),
			times(exactly(-0.002658), age(known), mass(known)),
			times(exactly(0.07693), massPerStature(known)),
		),
}
/** Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764, from stature alone. */
const moore: Record<Sex, Equation> = {
	male: (known) => plus(exactly(-7.999994), times(exactly(0.0036124), age(known), stature(known))),
	female: (known) =>
		plus(exactly(-7.709133), times(exactly(0.0042232), age(known), stature(known))),
}
/** Moore et al. 2015, boys, with sitting height; there is no girls' equation with it. */
const mooreSitting: Equation = (known) =>
	plus(exactly(-8.128741), times(exactly(0.0070346), age(known), sittingHeight(known)))
/**
 * Maturity ratio (age / age at peak height velocity), boys only: Fransen et al., Pediatr Exerc Sci
 * 2018;30(2):296-307.
 */
const fransen: Equation = (known) =>
	plus(
		exactly(6.986547255416),
		times(exactly(0.115802846632), age(known)),
		times(exactly(0.001450825199), squared(age(known))),
		times(exactly(0.004518400406), mass(known)),
		times(exactly(-0.000034086447), squared(mass(known))),
		times(exactly(-0.151951447289), stature(known)),
		times(exactly(0.000932836659), squared(stature(known))),
		times(exactly(-0.000001656585), cubed(stature(known))),
		times(exactly(0.032198263733), leg(known)),
		times(exactly(-0.000269025264), squared(leg(known))),
		times(exactly(-0.000760897942), stature(known), age(known)),
	)

/** Offset by Mirwald et al. 2002, boys. */
export const mirwaldBoys = (sized: Sized): number => mirwald.male(sized).value
/** Offset by Mirwald et al. 2002, girls. */
export const mirwaldGirls = (sized: Sized): number => mirwald.female(sized).value
/** Offset by Moore et al. 2015, boys, with sitting height. */
export const mooreSittingBoys = (ageYears: number, sittingHeightCm: number): number =>
	mooreSitting({ ageYears, sittingHeightCm }).value
/** Offset by Moore et al. 2015, boys, from stature alone. */
export const mooreBoys = (ageYears: number, statureCm: number): number =>
	moore.male({ ageYears, statureCm }).value
/** Offset by Moore et al. 2015, girls, from stature alone. */
export const mooreGirls = (ageYears: number, statureCm: number): number =>
	moore.female({ ageYears, statureCm }).value
/** Maturity ratio by Fransen et al. 2018, boys: age / age at peak height velocity. */
export const fransenRatioBoys = (sized: Sized): number => fransen(sized).value
/** Age at peak height velocity by an offset, both in years. */
export const peakAge = (ageYears: number, offset: number): Formula =>
	minus(quantity(ageYears, 1), quantity(offset, 1))
/** Age at peak height velocity by a maturity ratio. */
export const peakAgeByRatio = (ageYears: number, ratio: number): Formula =>
	over(quantity(ageYears, 4), quantity(ratio, 4))

/** The equations of each method as they are written down, with a player's values put in. */
export const equationLines = {
	mirwald: (sex: Sex, known: Known): string[] => [
		`Leg length: ${equation(legLength(known), 'cm', 1)}; mass / stature x 100: ` +
			equation(massToStature(known)),
		equation(mirwald[sex](known), 'years', 3),
	],
	moore: (sex: Sex, known: Known): string[] => [equation(moore[sex](known), 'years', 3)],
	mooreSitting: (_: Sex, known: Known): string[] => [equation(mooreSitting(known), 'years', 3)],
	fransen: (_: Sex, known: Known): string[] => {
		const ratio = fransen(known)
		return [
			equation(ratio, '', 4),
			`Maturity ratio from age ${inNumbers(age(known))}, stature ${inNumbers(stature(known))}, ` +
				`leg ${inNumbers(leg(known))} and mass ${inNumbers(mass(known))}`,
			`Age at peak height velocity, age / ratio: ` +
				`${equation(peakAgeByRatio(known.ageYears, ratio.value), 'years', 3)}; offset = age less that`,
		]
	},
}
