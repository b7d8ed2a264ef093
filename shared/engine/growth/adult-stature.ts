import { khamisRoche } from '../protocol/norms/khamis-roche.table.ts'

const cmPerInch = 2.54,
	kgPerPound = 0.45359237

/**
 * Adult stature a parent reports, corrected for the usual overstatement; cm. Attributed to Epstein
 * et al. 1995 (journal from memory).
 */
export function adjustedParentCm(parent: 'mother' | 'father', reportedCm: number): number {
	const inches = reportedCm / cmPerInch
	return (parent === 'mother' ? 2.803 + 0.953 * inches : 2.316 + 0.955 * inches) * cmPerInch
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

/**
 * The coefficients at an age, linear between half years; undefined outside 4.0 to 17.5 years.
 * Lengths in inches, mass in pounds.
 */
export function khamisRocheAt(
	sex: 'male' | 'female',
	ageYears: number,
): { constant: number; stature: number; weight: number; midparent: number } | undefined {
	const rows = khamisRoche[sex]
	const at = rows.findIndex(([age]) => age >= ageYears)
	const above = rows[at]
	if (!above || ageYears < rows[0]![0]) return undefined
	const below = at === 0 ? above : rows[at - 1]!
	const part = above[0] === below[0] ? 0 : (ageYears - below[0]) / (above[0] - below[0])
	const between = (index: 1 | 2 | 3 | 4) => below[index] + part * (above[index] - below[index])
	return { constant: between(1), stature: between(2), weight: between(3), midparent: between(4) }
}
/**
 * Predicted adult stature in cm, Khamis-Roche with the weights of the 1995 erratum; coefficients
 * are
 * interpolated linearly between half years. Parents' statures are adjusted only where `reported`.
 * @returns the raw prediction (it may fall below the present stature), or undefined outside 4.0 to
 * 17.5 years
 */
export function khamisRocheCm({
	sex,
	ageYears,
	statureCm,
	massKg,
	motherCm,
	fatherCm,
	reported,
}: AdultStatureInput): number | undefined {
	const at = khamisRocheAt(sex, ageYears)
	if (!at) return undefined
	const mother = reported ? adjustedParentCm('mother', motherCm) : motherCm
	const father = reported ? adjustedParentCm('father', fatherCm) : fatherCm
	const midparent = (mother + father) / 2 / cmPerInch
	return (
		(at.constant +
			at.stature * (statureCm / cmPerInch) +
			at.weight * (massKg / kgPerPound) +
			at.midparent * midparent) *
		cmPerInch
	)
}
