import type { Assessment } from '../findings/assessment.ts'
import { centile, lmsAt } from '../growth/centiles.ts'
import { quantileAbove } from '../plain/normal.ts'
import type { Basis } from '../protocol/basis.ts'
import { cdcMass, cdcStature } from '../protocol/norms/cdc2000.table.ts'
import { dayNumber, decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { dateWords } from '../words/words.ts'
import type { Chart, Curve } from './chart.ts'
import { inOrder, number } from './course.ts'

const daysPerMonth = 30.4375
/** The percentiles printed on the CDC 2000 charts for clinical use. */
const percentiles = [3, 10, 25, 50, 75, 90, 97]
/** Ages of the table, years: 59.5 months to 20 years. */
const from = 59.5 / 12,
	to = 20
/**
 * Years shown before the first and after the last reading; enough to see which way the curves run.
 */
const before = 1.5,
	after = 2
const kinds = {
	stature: {
		table: cdcStature,
		title: 'Stature',
		unit: 'cm',
		leastSpan: 20,
		of: (visit: Visit) => visit.body?.statureCm,
	},
	mass: {
		table: cdcMass,
		title: 'Body mass',
		unit: 'kg',
		leastSpan: 15,
		of: (visit: Visit) => visit.body?.massKg,
	},
} as const
export type GrowthMeasure = keyof typeof kinds
const basis: Basis = {
	rule: 'growth centiles, background for shoe fit and load, not a diagnosis',
	source: 'CDC 2000 growth charts (Kuczmarski et al. 2002, Vital Health Stat 11(246))',
	strength: 'standard',
}

/**
 * The value at a percentile (cm or kg) at an exact age in months, by LMS; undefined outside the
 * table.
 */
export function valueAtPercentile(
	kind: GrowthMeasure,
	sex: 'male' | 'female',
	months: number,
	percentile: number,
): number | undefined {
	const at = lmsAt(kinds[kind].table, sex, months)
	if (!at) return undefined
	const z = quantileAbove(1 - percentile / 100)
	return at.l === 0 ? at.m * Math.exp(at.s * z) : at.m * (1 + at.l * at.s * z) ** (1 / at.l)
}
/**
 * Stature (cm) or body mass (kg) of a player under 18 on the CDC 2000 centile curves, with every
 * visit inside the table's ages.
 * @returns undefined for adults (no growth result) and where no visit within the table's ages has
 * the measure
 */
export function growthChart(
	kind: GrowthMeasure,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
): Chart | undefined {
	if (!assessment.growth) return undefined
	const { table, title, unit, leastSpan, of } = kinds[kind]
	const { sex, birthDate } = visit.player
	const points = inOrder(visit, earlier).flatMap((one) => {
		const value = of(one),
			months = (dayNumber(one.visitDate) - dayNumber(birthDate)) / daysPerMonth
		const at = value === undefined ? undefined : centile(table, sex, months, value)
		return value === undefined || !at
			? []
			: [
					{
						date: one.visitDate,
						age: decimalAgeYears(birthDate, one.visitDate),
						value,
						percentile: at.percentile,
					},
				]
	})
	const oldest = points.at(-1),
		youngest = points[0]
	if (!oldest || !youngest) return undefined
	const min = Math.max(from, youngest.age - before),
		max = Math.min(to, oldest.age + after)
	// a curve point every month of age; the ends exactly on the frame
	const ages = [
		min,
		...Array.from(
			{ length: Math.ceil((max - min) * 12) - 1 },
			(_, index) => min + (index + 1) / 12,
		),
		max,
	]
	const curves: Curve[] = percentiles.map((percentile) => ({
		name: `P${percentile}`,
		strong: percentile === 50,
		points: ages.flatMap((age) => {
			const y = valueAtPercentile(kind, sex, Math.min(age * 12, 240), percentile)
			return y === undefined ? [] : [{ x: age, y }]
		}),
	}))
	const word = (percentile: number) =>
		percentile < 1 ? 'below 1' : percentile > 99 ? 'above 99' : number(percentile, 0)
	const who = sex === 'male' ? 'boys' : 'girls'
	const says = (one: (typeof points)[number]) =>
		`${number(one.value)} ${unit} at ${number(one.age)} years (centile ${word(one.percentile)})`
	const nowMonths = oldest.age * 12
	const reference =
		'Reference at that age: ' +
		`${[3, 50, 97].map((one) => `P${one} ${number(valueAtPercentile(kind, sex, nowMonths, one) ?? oldest.value)} ${unit}`).join(', ')}.`
	const caution = 'Background for shoe fit and load, not a diagnosis.'
	return {
		id: `growth-${kind}`,
		title: `${title} on the CDC 2000 centile curves`,
		x: { title: 'Age', unit: 'years', kind: 'number', min, max },
		y: { title, unit, kind: 'number', leastSpan },
		panels: [
			{
				series: [
					{
						name: `visits, on CDC 2000 curves for ${who}`,
						marker: 'circle',
						dashed: false,
						points: points.map((point) => ({ x: point.age, y: point.value })),
					},
				],
				bands: [],
				curves,
				marks: [],
			},
		],
		visits: points.length,
		forecast: false,
		alternative:
			`${title} for age on the CDC 2000 centile curves for ${who}: ` +
			`${points.map(says).join(', ')}. ${reference} ${caution}`,
		summary:
			`${title} for age on the CDC 2000 centile curves for ${who}: ${says(oldest)}. ` +
			`${reference} ${caution}`,
		table: {
			head: ['Date', 'Age (years)', `${title} (${unit})`, 'Centile', 'P3', 'P50', 'P97'],
			rows: points.map((point) => [
				dateWords(point.date),
				number(point.age, 2),
				number(point.value),
				word(point.percentile),
				...[3, 50, 97].map((each) =>
					number(valueAtPercentile(kind, sex, point.age * 12, each) ?? point.value),
				),
			]),
		},
		basis: [basis],
	}
}
