/** Stature and body mass on the CDC 2000 centile curves. */
import type { KeptAssessment } from '../findings/assessment.ts'
import { numberIn } from '../findings/measure-change.ts'
import { centile, lmsAt, valueAt } from '../growth/centiles.ts'
import { quantileAbove } from '../plain/normal.ts'
import type { Basis } from '../protocol/basis.ts'
import { cdcMass, cdcStature } from '../protocol/norms/cdc2000.table.ts'
import { ageMonths, decimalAgeYears } from '../visit/age.ts'
import { measured } from '../visit/measures/value.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { dateWords, shown } from '../words/words.ts'
import { type Chart, type Curve, toldBy } from './chart.ts'
import { inOrder, leastSpanOf } from './course.ts'

/** The percentiles printed on the CDC 2000 charts for clinical use. */
const percentiles = [3, 10, 25, 50, 75, 90, 97]
/** How far each stands from the middle, worked out once: a curve asks it at every age. */
const zAt: ReadonlyMap<number, number> = new Map(
	percentiles.map((percentile) => [percentile, quantileAbove(1 - percentile / 100)]),
)
/** Ages of the table, years: 59.5 months to 20 years. */
const monthsOf = cdcStature.male.map(([months]) => months)
const tableFrom = Math.min(...monthsOf) / 12
const tableTo = 20
/**
 * Years shown before the first and after the last reading; enough to see which way the curves run.
 */
const yearsBefore = 1.5
const yearsAfter = 2
const kinds = {
	stature: {
		table: cdcStature,
		code: 'chart.stature',
		of: numberIn('size', 'statureCm'),
	},
	mass: {
		table: cdcMass,
		code: 'chart.mass',
		of: numberIn('size', 'massKg'),
	},
} as const
type GrowthMeasure = keyof typeof kinds
interface MeasuredPlayer {
	kind: GrowthMeasure
	sex: Visit['player']['sex']
	birthDate: string
}
/** A visit inside the table's ages. */
interface GrowthPoint {
	date: string
	/** Decimal years. */
	age: number
	value: number
	percentile: number
}
/** The percentiles that are said in words and stand in the table. */
const namedPercentiles = [3, 50, 97]
const basis: Basis = {
	rule: 'growth centiles, background for shoe fit and load, not a diagnosis',
	source: 'CDC 2000 growth charts (Kuczmarski et al. 2002, Vital Health Stat 11(246))',
	strength: 'standard',
}

/**
 * The value at a percentile (cm or kg) at an exact age in months, by LMS; undefined outside the
 * table.
 * @internal
 */
export function valueAtPercentile(
	kind: GrowthMeasure,
	sex: 'male' | 'female',
	months: number,
	percentile: number,
): number | undefined {
	const lms = lmsAt(kinds[kind].table, sex, months)
	if (!lms) return undefined
	return valueAt(zAt.get(percentile) ?? quantileAbove(1 - percentile / 100), lms)
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
	assessment: KeptAssessment,
): Chart | undefined {
	if (!assessment.growth) return undefined
	const { sex, birthDate } = visit.player
	const player: MeasuredPlayer = { kind, sex, birthDate }
	const points = inOrder(visit, earlier).flatMap((seen) => pointOf(seen, player))
	const [youngest] = points
	const oldest = points.at(-1)
	if (!youngest || !oldest) return undefined
	const { measure } = kinds[kind].of
	const { label: title, unit } = measure
	const min = Math.max(tableFrom, youngest.age - yearsBefore)
	const max = Math.min(tableTo, oldest.age + yearsAfter)
	const who = sex === 'male' ? 'boys' : 'girls'
	const saidOf = (said: readonly GrowthPoint[]) => [
		state(kinds[kind].code, { sex, points: said.map(pointSaid) }),
		referenceOf(oldest, player),
	]
	return {
		id: `growth-${kind}`,
		title: `${title} on the CDC 2000 centile curves`,
		x: { title: 'Age', unit: 'years', kind: 'number', min, max },
		y: { title, unit, kind: 'number', leastSpan: leastSpanOf(measure) },
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
				curves: curvesOf(player, agesBetween(min, max)),
				marks: [],
			},
		],
		visits: points.length,
		forecast: false,
		...toldBy(saidOf(points), saidOf([oldest])),
		...(kind === 'mass' ? { private: 'weight' as const } : {}),
		table: tableOf(points, player),
		basis: [basis],
	}
}

function pointOf(visit: Visit, { kind, sex, birthDate }: MeasuredPlayer): GrowthPoint[] {
	const { table, of } = kinds[kind]
	const value = measured(visit, of)
	if (value === undefined) return []
	const months = ageMonths(birthDate, visit.visitDate)
	const placed = centile(table, sex, months, value)
	if (!placed) return []
	return [
		{
			date: visit.visitDate,
			age: decimalAgeYears(birthDate, visit.visitDate),
			value,
			percentile: placed.percentile,
		},
	]
}
/** A point every month of age; the ends exactly on the frame. */
function agesBetween(min: number, max: number): number[] {
	const inside = Math.ceil((max - min) * 12) - 1
	return [min, ...Array.from({ length: inside }, (_, index) => min + (index + 1) / 12), max]
}
const curvesOf = ({ kind, sex }: MeasuredPlayer, ages: readonly number[]): Curve[] =>
	percentiles.map((percentile) => ({
		name: `P${percentile}`,
		strong: percentile === 50,
		points: ages.flatMap((age) => {
			const y = valueAtPercentile(kind, sex, Math.min(age * 12, tableTo * 12), percentile)
			return y === undefined ? [] : [{ x: age, y }]
		}),
	}))
function percentileWords(percentile: number): string {
	if (percentile < 1) return 'below 1'
	return percentile > 99 ? 'above 99' : shown(percentile, 0)
}
const pointSaid = ({ value, age, percentile }: GrowthPoint) => ({
	value,
	ageYears: rounded(age, 1),
	percentile,
})
/** The value of a percentile at the age of a point, in the words of a table. */
const referenceAt = (point: GrowthPoint, percentile: number, player: MeasuredPlayer): string =>
	shown(valueFor(point, percentile, player))
const valueFor = (
	{ age, value }: GrowthPoint,
	percentile: number,
	{ kind, sex }: MeasuredPlayer,
): number => valueAtPercentile(kind, sex, age * 12, percentile) ?? value
const referenceOf = (point: GrowthPoint, player: MeasuredPlayer): Statement =>
	state('chart.reference', {
		unit: kinds[player.kind].of.measure.unit,
		values: namedPercentiles.map((percentile) => ({
			percentile,
			value: rounded(valueFor(point, percentile, player), 1),
		})),
	})
function tableOf(points: readonly GrowthPoint[], player: MeasuredPlayer): Chart['table'] {
	const { label: title, unit } = kinds[player.kind].of.measure
	return {
		head: ['Date', 'Age (years)', `${title} (${unit})`, 'Centile', 'P3', 'P50', 'P97'],
		rows: points.map((point) => [
			dateWords(point.date),
			shown(point.age, 2),
			shown(point.value),
			percentileWords(point.percentile),
			...namedPercentiles.map((percentile) => referenceAt(point, percentile, player)),
		]),
	}
}
