/**
 * Adult stature by Khamis and Roche: the sum as it is computed, and the same sum as it is written
 * down.
 */
import { figure, linesOf } from '../findings/working.ts'
import { khamisRoche } from '../protocol/norms/khamis-roche.table.ts'
import { rowsAround } from './between.ts'

const cmPerInch = 2.54
const kgPerPound = 0.45359237

/** Corrections of what parents report, on inches: intercept and slope. */
const parentCorrection = { mother: [2.803, 0.953], father: [2.316, 0.955] } as const

/**
 * Adult stature a parent reports, corrected for the usual overstatement; cm. Attributed to Epstein
 * et al. 1995 (journal from memory).
 * @internal
 */
export function adjustedParentCm(parent: 'mother' | 'father', reportedCm: number): number {
	const [intercept, slope] = parentCorrection[parent]
	return (intercept + slope * (reportedCm / cmPerInch)) * cmPerInch
}

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
	input: AdultStatureInput
	coefficients: Coefficients
	motherCm: number
	fatherCm: number
	statureIn: number
	massLb: number
	midparentIn: number
	predictedIn: number
}
function worked(input: AdultStatureInput): Worked | undefined {
	const coefficients = khamisRocheAt(input.sex, input.ageYears)
	if (!coefficients) return undefined
	const { reported } = input
	const motherCm = reported ? adjustedParentCm('mother', input.motherCm) : input.motherCm
	const fatherCm = reported ? adjustedParentCm('father', input.fatherCm) : input.fatherCm
	const statureIn = input.statureCm / cmPerInch
	const massLb = input.massKg / kgPerPound
	const midparentIn = (motherCm + fatherCm) / 2 / cmPerInch
	const predictedIn =
		coefficients.constant +
		coefficients.stature * statureIn +
		coefficients.weight * massLb +
		coefficients.midparent * midparentIn
	return {
		input,
		coefficients,
		motherCm,
		fatherCm,
		statureIn,
		massLb,
		midparentIn,
		predictedIn,
	}
}
/**
 * Predicted adult stature in cm, Khamis-Roche with the weights of the 1995 erratum; coefficients
 * are
 * interpolated linearly between half years. Parents' statures are adjusted only where `reported`.
 * @returns the raw prediction (it may fall below the present stature), or undefined outside 4.0 to
 * 17.5 years
 */
export function khamisRocheCm(input: AdultStatureInput): number | undefined {
	const sum = worked(input)
	return sum && sum.predictedIn * cmPerInch
}
function adjustedLine({ input, motherCm, fatherCm }: Worked): string {
	const adjusted = (parent: 'mother' | 'father', reportedCm: number, adjustedCm: number) => {
		const [intercept, slope] = parentCorrection[parent]
		return (
			`${parent} ${intercept} + ${slope} x ${figure(reportedCm / cmPerInch)} in = ` +
			`${figure(adjustedCm, 1)} cm`
		)
	}
	const mother = adjusted('mother', input.motherCm, motherCm)
	const father = adjusted('father', input.fatherCm, fatherCm)
	return `Reported statures adjusted: ${mother}; ${father} (from memory)`
}
/** The sum written down with its values put in; none outside 4.0 to 17.5 years. */
export function khamisRocheLines(input: AdultStatureInput): string[] {
	const sum = worked(input)
	if (!sum) return []
	const { coefficients, motherCm, fatherCm, statureIn, massLb, midparentIn, predictedIn } = sum
	const predictedCm = predictedIn * cmPerInch
	const below =
		predictedCm < input.statureCm
			? `, below the present stature: ${figure(input.statureCm, 1)} cm is used`
			: ''
	return linesOf(
		input.reported ? adjustedLine(sum) : undefined,
		`Stature ${figure(statureIn)} in, mass ${figure(massLb)} lb, midparent ` +
			`(${figure(motherCm, 1)} + ${figure(fatherCm, 1)}) / 2 / ${cmPerInch} = ` +
			`${figure(midparentIn)} in`,
		`${figure(coefficients.constant, 4)} + ${figure(coefficients.stature, 4)} x ` +
			`${figure(statureIn)} + (${figure(coefficients.weight, 5)}) x ${figure(massLb)} + ` +
			`${figure(coefficients.midparent, 4)} x ${figure(midparentIn)} = ` +
			`${figure(predictedIn)} in = ${figure(predictedCm, 1)} cm${below}`,
	)
}
