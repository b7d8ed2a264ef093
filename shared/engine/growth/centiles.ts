/** Centiles of stature, mass and body mass index (CDC 2000). */
import type { Centile } from '../findings/assessment.ts'
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
/** z of a value by LMS (Cole and Green, Stat Med 1992;11:1305-1319). @internal */
export function lmsZ(value: number, { l, m, s }: At): number {
	return l === 0 ? Math.log(value / m) / s : ((value / m) ** l - 1) / (l * s)
}
/** The value (cm, kg or kg/m2) at a z by LMS: the other way round, for curves. */
const valueAt = (z: number, { l, m, s }: At): number =>
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
/**
 * CDC centile of BMI (kg/m2). Above the 95th centile the extended method: half-normal with
 * sigma by age (Wei 2020, doi 10.1080/03014460.2020.1808065).
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
	const years = months / 12
	const sigma =
		sex === 'male'
			? 0.3728 + 0.5196 * years - 0.0091 * years ** 2
			: 0.8334 + 0.3712 * years - 0.0011 * years ** 2
	const tail = 0.1 * above(Math.min((bmi - p95) / sigma, farthest))
	return { z: quantileAbove(tail), percentile: 100 * (1 - tail) }
}
