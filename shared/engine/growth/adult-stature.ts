/**
 * Adult stature by Khamis and Roche: the sum as it is computed, and the same sum as it is written
 * down.
 */
import {
	equation,
	exactly,
	type Formula,
	over,
	plus,
	quantity,
	times,
} from '../findings/formula.ts'
import { figure, linesOf } from '../findings/working.ts'
import { khamisRoche } from '../protocol/norms/khamis-roche.table.ts'
import { rowsAround } from './between.ts'

const cmPerInch = 2.54
const kgPerPound = 0.45359237
const inInches = (cm: number) => over(quantity(cm, 1), exactly(cmPerInch))
const inCm = (inches: number) => times(quantity(inches), exactly(cmPerInch))
const inPounds = (kg: number) => over(quantity(kg, 1), exactly(kgPerPound))

/** Corrections of what parents report, on inches: intercept and slope. */
const parentCorrection = { mother: [2.803, 0.953], father: [2.316, 0.955] } as const

/** A reported stature corrected for the usual overstatement, inches. */
function adjustedParent(parent: 'mother' | 'father', reportedCm: number): Formula {
	const [intercept, slope] = parentCorrection[parent]
	return plus(exactly(intercept), times(exactly(slope), quantity(inInches(reportedCm).value)))
}
/**
 * Adult stature a parent reports, corrected for the usual overstatement; cm. Attributed to Epstein
 * et al. 1995 (journal from memory).
 * @internal
 */
export const adjustedParentCm = (parent: 'mother' | 'father', reportedCm: number): number =>
	inCm(adjustedParent(parent, reportedCm).value).value

export interface AdultStatureInput {
	sex: 'male' | 'female'
	ageYears: number
	statureCm: number
	massKg: number
	motherCm: number
	fatherCm: number
	reported: boolean
}
interface Coefficients {
	constant: number
	stature: number
	weight: number
	midparent: number
}
/**
 * The coefficients at an age, linear between half years; undefined outside 4.0 to 17.5 years.
 * Lengths in inches, mass in pounds.
 * @internal
 */
export function khamisRocheAt(sex: 'male' | 'female', ageYears: number): Coefficients | undefined {
	const around = rowsAround(khamisRoche[sex], ageYears)
	if (!around) return undefined
	const { low, high, part } = around
	const between = (column: 1 | 2 | 3 | 4) => low[column] + part * (high[column] - low[column])
	return { constant: between(1), stature: between(2), weight: between(3), midparent: between(4) }
}
/** The sum with this player's values put in; inches and pounds as the coefficients ask. */
interface Worked {
	stature: Formula
	mass: Formula
	midparent: Formula
	/** Adult stature, inches. */
	predicted: Formula
	predictedCm: Formula
}
function worked(input: AdultStatureInput): Worked | undefined {
	const coefficients = khamisRocheAt(input.sex, input.ageYears)
	if (!coefficients) return undefined
	const parentCm = (parent: 'mother' | 'father', cm: number) =>
		quantity(input.reported ? adjustedParentCm(parent, cm) : cm, 1)
	const parents = plus(parentCm('mother', input.motherCm), parentCm('father', input.fatherCm))
	const stature = inInches(input.statureCm)
	const mass = inPounds(input.massKg)
	const midparent = over(over(parents, exactly(2)), exactly(cmPerInch))
	const predicted = plus(
		quantity(coefficients.constant, 4),
		times(quantity(coefficients.stature, 4), quantity(stature.value)),
		times(quantity(coefficients.weight, 5), quantity(mass.value)),
		times(quantity(coefficients.midparent, 4), quantity(midparent.value)),
	)
	return { stature, mass, midparent, predicted, predictedCm: inCm(predicted.value) }
}
/**
 * Predicted adult stature in cm, Khamis-Roche with the weights of the 1995 erratum; coefficients
 * are
 * interpolated linearly between half years. Parents' statures are adjusted only where `reported`.
 * @returns the raw prediction (it may fall below the present stature), or undefined outside 4.0 to
 * 17.5 years
 */
export const khamisRocheCm = (input: AdultStatureInput): number | undefined =>
	worked(input)?.predictedCm.value

function adjustedLine({ motherCm, fatherCm }: AdultStatureInput): string {
	const adjusted = (parent: 'mother' | 'father', reportedCm: number) => {
		const inches = adjustedParent(parent, reportedCm)
		return `${parent} ${equation(inches, 'in')}, ${figure(inCm(inches.value).value, 1)} cm`
	}
	return (
		`Reported statures adjusted: ${adjusted('mother', motherCm)}; ` +
		`${adjusted('father', fatherCm)} (from memory)`
	)
}
/** The sum written down with its values put in; none outside 4.0 to 17.5 years. */
export function khamisRocheLines(input: AdultStatureInput): string[] {
	const sum = worked(input)
	if (!sum) return []
	const { stature, mass, midparent, predicted, predictedCm } = sum
	const below =
		predictedCm.value < input.statureCm
			? `, below the present stature: ${figure(input.statureCm, 1)} cm is used`
			: ''
	return linesOf(
		input.reported ? adjustedLine(input) : undefined,
		`Stature ${equation(stature, 'in')}; mass ${equation(mass, 'lb')}; midparent ` +
			equation(midparent, 'in'),
		equation(predicted, 'in'),
		`${equation(predictedCm, 'cm', 1)}${below}`,
	)
}
