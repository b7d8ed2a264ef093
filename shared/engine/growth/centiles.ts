/** Centiles of stature, mass and body mass index (CDC 2000). */
import type { Centile } from '../findings/assessment.ts'
import {
	exactly,
	type Formula,
	minus,
	naturalLog,
	over,
	plus,
	quantity,
	squared,
	times,
	toThePower,
} from '../findings/formula.ts'
import { above, below, quantileAbove } from '../plain/normal.ts'
import type { LmsTable } from '../protocol/norms/cdc2000.table.ts'
import { rowsAround } from './between.ts'

type Sex = 'male' | 'female'
interface At {
	l: number
	m: number
	s: number
}

/**
 * L, M, S at an exact age in months (days / 30.4375), linear between the table's points; undefined
 * outside the table.
 */
export function lmsAt(table: LmsTable, sex: Sex, months: number): At | undefined {
	const around = rowsAround(table[sex], months)
	if (!around) return undefined
	const { low, high, part } = around
	const between = (column: 1 | 2 | 3) => low[column] + part * (high[column] - low[column])
	return { l: between(1), m: between(2), s: between(3) }
}
/** z of a value by LMS (Cole and Green, Stat Med 1992;11:1305-1319). */
export function lmsFormula(value: number, { l, m, s }: At): Formula {
	const [power, spread] = [quantity(l, 4), quantity(s, 5)]
	const share = over(quantity(value), quantity(m, 3))
	return l === 0
		? over(naturalLog(share), spread)
		: over(minus(toThePower(share, power), exactly(1)), times(power, spread))
}
/** @internal */
export const lmsZ = (value: number, at: At): number => lmsFormula(value, at).value
/** The value (cm, kg or kg/m2) at a z by LMS: the other way round, for curves. */
export const valueAt = (z: number, { l, m, s }: At): number =>
	l === 0 ? m * Math.exp(s * z) : m * (1 + l * s * z) ** (1 / l)

/** CDC 2000 centile of stature (cm) or mass (kg); undefined outside the table's ages. */
export function centile(
	table: LmsTable,
	sex: Sex,
	months: number,
	value: number,
): Centile | undefined {
	const at = lmsAt(table, sex, months)
	if (!at) return undefined
	const z = lmsZ(value, at)
	return { z, percentile: 100 * below(z) }
}

const z95 = quantileAbove(0.05)
/** The 95th centile, above which the extended method holds for BMI. */
export const p95At = (at: At): number => valueAt(z95, at)
/** Beyond this many sigma the tail is too thin for a double: the z is held here (about 6.6). */
const farthest = 8
/** Spread of the extended method by age in years: Wei 2020, doi 10.1080/03014460.2020.1808065. */
const sigmaAt: Record<Sex, (years: Formula) => Formula> = {
	male: (years) =>
		plus(exactly(0.3728), times(exactly(0.5196), years), times(exactly(-0.0091), squared(years))),
	female: (years) =>
		plus(exactly(0.8334), times(exactly(0.3712), years), times(exactly(-0.0011), squared(years))),
}
/** How far a BMI lies above the 95th centile, in sigma of the extended method. */
export function extendedBmi(
	sex: Sex,
	months: number,
	bmi: number,
	p95: number,
): { sigma: Formula; spread: Formula } {
	const sigma = sigmaAt[sex](quantity(months / 12, 4))
	const spread = over(minus(quantity(bmi), quantity(p95)), quantity(sigma.value, 3))
	return { sigma, spread }
}
/**
 * CDC centile of BMI (kg/m2). Above the 95th centile the extended method: half-normal with
 * sigma by age (Wei 2020).
 */
export function bmiCentile(
	table: LmsTable,
	sex: Sex,
	months: number,
	bmi: number,
): Centile | undefined {
	const at = lmsAt(table, sex, months)
	if (!at) return undefined
	const p95 = p95At(at)
	if (bmi <= p95) return centile(table, sex, months, bmi)
	const { spread } = extendedBmi(sex, months, bmi, p95)
	const tail = 0.1 * above(Math.min(spread.value, farthest))
	return { z: quantileAbove(tail), percentile: 100 * (1 - tail) }
}
