/**
 * Maturity equations. Age in decimal years, lengths in cm, mass in kg; results in years from peak
 * height velocity, negative before it. Each is a sum that both computes and is written down. No
 * limits are applied here: see estimate.ts.
 */
import { figure } from '../findings/working.ts'
import { need } from '../plain/need.ts'

interface Sized {
	ageYears: number
	statureCm: number
	sittingHeightCm: number
	massKg: number
}
/** What is known of a player: an equation asks only for what stands in it. */
type Known = Pick<Sized, 'ageYears'> & Partial<Sized>

const statureOf = ({ statureCm }: Known) => need(statureCm, 'stature')
const sittingOf = ({ sittingHeightCm }: Known) => need(sittingHeightCm, 'sitting height')
const legOf = (known: Known) => statureOf(known) - sittingOf(known)
const massOf = ({ massKg }: Known) => need(massKg, 'body mass')

/** A number that stands in an equation: its value, and how it is written. */
interface Quantity {
	of: (known: Known) => number
	shown: (known: Known) => string
}
const tenths = (of: Quantity['of']): Quantity => ({ of, shown: (known) => figure(of(known), 1) })
const power = ({ of, shown }: Quantity, exponent: 2 | 3, words: 'squared' | 'cubed'): Quantity => ({
	of: (known) => of(known) ** exponent,
	shown: (known) => `${shown(known)} ${words}`,
})
const age: Quantity = {
	of: ({ ageYears }) => ageYears,
	shown: ({ ageYears }) => figure(ageYears, 4),
}
const stature = tenths(statureOf)
const sittingHeight = tenths(sittingOf)
const leg = tenths(legOf)
const mass = tenths(massOf)
const massPerStature: Quantity = {
	of: (known) => (massOf(known) / statureOf(known)) * 100,
	shown: (known) => figure((100 * massOf(known)) / statureOf(known)),
}

/** A constant and terms of a coefficient times some quantities. */
interface Equation {
	constant: number
	terms: readonly (readonly [coefficient: number, ...Quantity[]])[]
}
const solve = ({ constant, terms }: Equation, known: Known): number =>
	terms.reduce(
		(sum, [coefficient, ...quantities]) =>
			sum + quantities.reduce((product, { of }) => product * of(known), coefficient),
		constant,
	)
const written = ({ constant, terms }: Equation, known: Known): string =>
	terms.reduce((line, [coefficient, ...quantities]) => {
		const factors = [Math.abs(coefficient), ...quantities.map(({ shown }) => shown(known))]
		return `${line} ${coefficient < 0 ? '-' : '+'} ${factors.join(' x ')}`
	}, `${constant}`)

/**
 * Mirwald et al., Med Sci Sports Exerc 2002;34(4):689-694. The last term is (mass / stature) x
 * 100.
 */
const mirwald = {
	male: {
		constant: -9.236,
		terms: [
			[0.0002708, leg, sittingHeight],
			[-0.001663, age, leg],
			[0.007216, age, sittingHeight],
			[0.02292, massPerStature],
		],
	},
	female: {
		constant: -9.376,
		terms: [
			[0.0001882, leg, sittingHeight],
			[0.0022, age, leg],
			[0.005841, age, sittingHeight],
			[-0.002658, age, mass],
			[0.07693, massPerStature],
		],
	},
} as const satisfies Record<'male' | 'female', Equation>
/** Moore et al., Med Sci Sports Exerc 2015;47(8):1755-1764, from stature alone. */
const moore = {
	male: { constant: -7.999994, terms: [[0.0036124, age, stature]] },
	female: { constant: -7.709133, terms: [[0.0042232, age, stature]] },
} as const satisfies Record<'male' | 'female', Equation>
/** Moore et al. 2015, boys, with sitting height; there is no girls' equation with it. */
const mooreSitting = {
	constant: -8.128741,
	terms: [[0.0070346, age, sittingHeight]],
} as const satisfies Equation
/**
 * Maturity ratio (age / age at peak height velocity), boys only: Fransen et al., Pediatr Exerc Sci
 * 2018;30(2):296-307.
 */
const fransen = {
	constant: 6.986547255416,
	terms: [
		[0.115802846632, age],
		[0.001450825199, power(age, 2, 'squared')],
		[0.004518400406, mass],
		[-0.000034086447, power(mass, 2, 'squared')],
		[-0.151951447289, stature],
		[0.000932836659, power(stature, 2, 'squared')],
		[-0.000001656585, power(stature, 3, 'cubed')],
		[0.032198263733, leg],
		[-0.000269025264, power(leg, 2, 'squared')],
		[-0.000760897942, stature, age],
	],
} as const satisfies Equation

/** Offset by Mirwald et al. 2002, boys. */
export const mirwaldBoys = (sized: Sized): number => solve(mirwald.male, sized)
/** Offset by Mirwald et al. 2002, girls. */
export const mirwaldGirls = (sized: Sized): number => solve(mirwald.female, sized)
/** Offset by Moore et al. 2015, boys, with sitting height. */
export const mooreSittingBoys = (ageYears: number, sittingHeightCm: number): number =>
	solve(mooreSitting, { ageYears, sittingHeightCm })
/** Offset by Moore et al. 2015, boys, from stature alone. */
export const mooreBoys = (ageYears: number, statureCm: number): number =>
	solve(moore.male, { ageYears, statureCm })
/** Offset by Moore et al. 2015, girls, from stature alone. */
export const mooreGirls = (ageYears: number, statureCm: number): number =>
	solve(moore.female, { ageYears, statureCm })
/** Maturity ratio by Fransen et al. 2018, boys: age / age at peak height velocity. */
export const fransenRatioBoys = (sized: Sized): number => solve(fransen, sized)

/** The equations of each method as they are written down, with a player's values put in. */
export const equationLines = {
	mirwald: (sex: 'male' | 'female', known: Known): string[] => [
		`Leg length = ${stature.shown(known)} - ${sittingHeight.shown(known)} = ` +
			`${leg.shown(known)} cm; mass / stature x 100 = ${mass.shown(known)} / ` +
			`${stature.shown(known)} x 100 = ${massPerStature.shown(known)}`,
		written(mirwald[sex], known),
	],
	moore: (sex: 'male' | 'female', known: Known): string[] => [written(moore[sex], known)],
	mooreSitting: (_: 'male' | 'female', known: Known): string[] => [written(mooreSitting, known)],
	fransen: (_: 'male' | 'female', known: Known): string[] => [
		written(fransen, known),
		`Maturity ratio from age ${age.shown(known)}, stature ${stature.shown(known)}, leg ` +
			`${leg.shown(known)} and mass ${mass.shown(known)}: ${figure(solve(fransen, known), 4)}`,
		'Age at peak height velocity = age / ratio; offset = age less that',
	],
}
