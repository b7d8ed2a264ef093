/** What the charts say beside what they draw. */
import { nameOfField } from '../../visit/field-names.ts'
import { numberMeasures } from '../../visit/measures/catalogue.ts'
import type { Side } from '../../visit/visit.ts'
import { sentence } from '../sentence.ts'
import { amount, capital, day, listed, number } from './format.ts'

interface Reading {
	date: string
	value: number
}
interface GrowthPoint {
	ageYears: number
	value: number
	percentile: number
}
type Sex = 'male' | 'female'
/** The title of a course: of the feet, or of a measure by its key. */
const courseTitle = (of: string): string =>
	`${of === 'foot' ? 'Foot length' : capital(nameOfField(of) ?? of)} over time`
const courseForPlayer: Readonly<Record<string, string>> = {
	foot: 'How your feet have grown.',
	lungeCm: 'How far your ankles have bent.',
	lungeDeg: 'How far your ankles have bent.',
}
/** What lies beyond the cut-off of a measure. */
function beyond(of: string): string {
	const found = numberMeasures.find(({ key }) => key === of)
	const trend = found?.measure.trend ?? 'none'
	return trend === 'none' || trend.cutOff === 'none' ? '' : `; ${trend.cutOff.means}`
}
const beyondForPlayer: Readonly<Record<string, string>> = {
	lungeCm: ' Below it an ankle counts as stiff.',
	lungeDeg: ' Below it an ankle counts as stiff.',
}
/** '241 mm on 15 July 2026, 246.5 mm on 20 January 2027'; 'not measured' where there is none. */
const readingList = (readings: readonly Reading[], unit: string): string =>
	readings.length === 0
		? 'not measured'
		: readings.map(({ date, value }) => `${amount(value, unit)} on ${day(date)}`).join(', ')
function percentileWords(percentile: number): string {
	if (percentile < 1) return 'below 1'
	return percentile > 99 ? 'above 99' : number(percentile, 0)
}
const growthList = (points: readonly GrowthPoint[], unit: string): string =>
	points
		.map(
			({ ageYears, value, percentile }) =>
				`${amount(value, unit)} at ${amount(ageYears, 'years')} ` +
				`(centile ${percentileWords(percentile)})`,
		)
		.join(', ')
const curvesOf = (what: string, sex: Sex): string =>
	`${what} for age on the CDC 2000 centile curves for ${sex === 'male' ? 'boys' : 'girls'}`

export const chartSentences = {
	'chart.course': sentence<{ of: string; seated: boolean }>({
		clinician: ({ of, seated }) => `${courseTitle(of)}${seated ? ', measured seated' : ''}.`,
		player: ({ of }) => courseForPlayer[of] ?? 'How your measures have changed.',
	}),
	'chart.line': sentence<{ of: string; readings: readonly Reading[]; unit: string }>({
		clinician: ({ of, readings, unit }) =>
			`${capital(nameOfField(of) ?? of)}: ${readingList(readings, unit)}.`,
	}),
	'chart.side': sentence<{
		side: Side
		of: 'foot' | 'ankle'
		readings: readonly Reading[]
		unit: string
	}>({
		clinician: ({ side, of, readings, unit }) =>
			`${capital(side)} ${of}: ${readingList(readings, unit)}.`,
		player: ({ side, of, readings, unit }) => `Your ${side} ${of}: ${readingList(readings, unit)}.`,
	}),
	'chart.foot-forecast': sentence<{
		by: string
		lowMm: number
		highMm: number
		lengthMm: number
	}>({
		clinician: ({ by, lowMm, highMm, lengthMm }) =>
			`By ${day(by)} the longer foot may measure ${number(lowMm)} to ${amount(highMm, 'mm')}, ` +
			`${amount(lengthMm, 'mm')} at the mean rate.`,
		player: ({ by, lowMm, highMm }) =>
			`By ${day(by)} your longer foot may measure ${number(lowMm, 0)} to ` +
			`${amount(highMm, 'mm', 0)}.`,
	}),
	'chart.room-ends': sentence<{
		pair: string
		lengthMm: number
		reached: boolean
		on?: string
	}>({
		clinician: ({ pair, lengthMm, reached, on }) => {
			const when = on === undefined ? '' : `, about ${day(on)}`
			return (
				`Toe room in ${pair} runs out at ${amount(lengthMm, 'mm')}` +
				`${reached ? ', already reached' : when}.`
			)
		},
		player: ({ pair, lengthMm, reached }) =>
			reached
				? `There is too little room for your toes in ${pair}.`
				: `The room in ${pair} ends when your foot measures ${amount(lengthMm, 'mm')}.`,
	}),
	'chart.cut-off': sentence<{ of: string; cutOff: number; unit: string }>({
		clinician: ({ of, cutOff, unit }) => `Cut-off in use ${amount(cutOff, unit)}${beyond(of)}.`,
		player: ({ of, cutOff, unit }) =>
			`The line stands at ${amount(cutOff, unit)}.${beyondForPlayer[of] ?? ''}`,
	}),
	'chart.measuring-error': sentence<{ widths: readonly number[]; unit: string }>({
		clinician: ({ widths, unit }) =>
			`A change of less than ${errorWidths(widths, unit)} is within measuring error.`,
		player: ({ widths, unit }) =>
			`A change of less than ${errorWidths(widths, unit)} may be chance.`,
	}),
	'chart.stature': sentence<{ sex: Sex; points: readonly GrowthPoint[] }>({
		clinician: ({ sex, points }) => `${curvesOf('Stature', sex)}: ${growthList(points, 'cm')}.`,
		player: ({ points }) =>
			`Your height: ${points
				.map(({ value, ageYears }) => `${amount(value, 'cm')} at ${amount(ageYears, 'years')}`)
				.join(', ')}.`,
	}),
	'chart.mass': sentence<{ sex: Sex; points: readonly GrowthPoint[] }>({
		private: 'weight',
		clinician: ({ sex, points }) => `${curvesOf('Body mass', sex)}: ${growthList(points, 'kg')}.`,
	}),
	'chart.reference': sentence<{
		unit: string
		values: readonly { percentile: number; value: number }[]
	}>({
		clinician: ({ unit, values }) =>
			`Reference at that age: ${values
				.map(({ percentile, value }) => `P${percentile} ${amount(value, unit)}`)
				.join(', ')}. Background for shoe fit and load, not a diagnosis.`,
		player: () =>
			'How tall you were at each visit. The thin lines show other people of your age. The thick ' +
			'one is the middle.',
	}),
}
/** '1.5 cm', or '1.5 or 2.4 cm' where the sides differ. */
function errorWidths(widths: readonly number[], unit: string): string {
	const [last = 0, ...before] = widths.toReversed()
	return listed([...before.toReversed().map((width) => number(width)), amount(last, unit)], 'or')
}
