/** How adult stature, the stage, the centiles and the growth rate were worked out. */
import type { Centile, GrowthResult } from '../findings/assessment.ts'
import type { Working } from '../findings/finding.ts'
import { equation } from '../findings/formula.ts'
import { figure, linesOf } from '../findings/working.ts'
import { type Basis, commonPractice } from '../protocol/basis.ts'
import { cdcBmi, cdcMass, cdcStature, type LmsTable } from '../protocol/norms/cdc2000.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageMonths } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'
import { stageMethodWords } from '../words/en/growth-maturity.ts'
import { adultErrorKey, adultStatureInput, shareOfAdult } from './adult.ts'
import { khamisRocheLines } from './adult-stature.ts'
import { extendedBmi, lmsAt, lmsFormula, p95At } from './centiles.ts'
import { bmiFormula, bmiOf } from './centiles-of-visit.ts'
import { perYear, perYearError } from './velocity.ts'

type Result = Omit<GrowthResult, 'workings'>

/** What was entered stands as it is. */
const enteredWorking = (enteredCm: number, usedCm: number): Working => ({
	id: 'growth.adult-stature',
	title: 'Expected adult stature, as entered',
	lines: linesOf(
		`${figure(enteredCm, 1)} cm`,
		usedCm > enteredCm ? `Below the present stature: ${figure(usedCm, 1)} cm is used` : undefined,
	),
	basis: { rule: 'expected adult stature as entered', ...commonPractice },
})
function adultWorkings(visit: Visit, result: Result, protocol: Protocol): Working[] {
	const enteredCm = visit.body?.adultStatureCm
	const { predictedAdultStatureCm: usedCm } = result
	if (enteredCm !== undefined && usedCm !== undefined) return [enteredWorking(enteredCm, usedCm)]
	const input = adultStatureInput(visit, result.decimalAgeYears, protocol)
	const { predictedAdultStatureRangeCm: range } = result
	if (!input || !range) return []
	const medianCm = protocol.value(
		visit.player.sex === 'male'
			? 'growth.adultStatureMedianBoysCm'
			: 'growth.adultStatureMedianGirlsCm',
	)
	const errorKey = adultErrorKey(visit)
	return [
		{
			id: 'growth.adult-stature',
			title: 'Predicted adult stature, Khamis-Roche',
			lines: [
				...khamisRocheLines(input),
				`Median error ${medianCm} cm; nine in ten within ${protocol.value(errorKey)} cm: ` +
					`${figure(range.low, 1)} to ${figure(range.high, 1)} cm`,
			],
			basis: protocol.basis('Khamis-Roche, weights of the 1995 erratum', errorKey),
		},
	]
}
function shareWorkings(visit: Visit, result: Result, protocol: Protocol): Working[] {
	const { statureCm } = bodySize(visit)
	const {
		predictedAdultStatureCm: adultCm,
		percentAdultStature: percent,
		percentAdultStatureRange: range,
	} = result
	if (statureCm === undefined || adultCm === undefined) return []
	if (percent === undefined) return []
	const byError =
		range === undefined
			? 'the error of what was entered is not known'
			: `by the prediction error ${figure(range.low, 1)} to ${figure(range.high, 1)} %`
	return [
		{
			id: 'growth.percent-adult-stature',
			title: 'Share of predicted adult stature',
			lines: [
				`${equation(shareOfAdult(statureCm, adultCm), '%', 1)}; ${byError}`,
				`Around the spurt from ${protocol.value('growth.percentAroundMin')} to ` +
					`${protocol.value('growth.percentAroundMax')} %`,
			],
			basis: protocol.basis('growth stage', 'growth.percentAroundMin'),
		},
	]
}
function stageWorking({ band, method }: Result, protocol: Protocol): Working {
	const restsOn = method ? stageMethodWords[method] : 'nothing, too few measures'
	return {
		id: 'growth.stage',
		title: 'Growth stage',
		lines: [
			`Band: ${band}; rests on: ${restsOn}`,
			'Share of adult stature first, else the offset; where the two disagree, uncertain',
		],
		basis: protocol.basis(
			'growth stage',
			method === 'percentAdultStature' ? 'growth.percentAroundMin' : 'growth.offsetAroundYears',
		),
	}
}
const cdc: Basis = {
	rule: 'growth centiles',
	source:
		'CDC 2000 growth charts (Kuczmarski et al. 2002); LMS method, Cole and Green, Stat Med ' +
		'1992;11:1305-1319',
	strength: 'standard',
}
const extendedCdc: Basis = {
	...cdc,
	source: 'CDC 2000, extended BMI method, Wei 2020, doi 10.1080/03014460.2020.1808065',
}
/** One centile as it was read: of what, from which table. */
interface Read {
	what: 'stature' | 'mass' | 'bmi'
	title: string
	unit: string
	table: LmsTable
	value: number | undefined
	centile: Centile | undefined
}
function centileWorkings(visit: Visit, read: Read): Working[] {
	const months = ageMonths(visit.player.birthDate, visit.visitDate)
	const at = lmsAt(read.table, visit.player.sex, months)
	const { value, centile } = read
	if (value === undefined || !centile || !at) return []
	const p95 = p95At(at)
	const extended = read.what === 'bmi' && value > p95
	const { sigma, spread } = extendedBmi(visit.player.sex, months, value, p95)
	const bmi = read.what === 'bmi' ? bmiFormula(visit) : undefined
	return [
		{
			id: `growth.centile-${read.what}`,
			title: `Centile of ${read.title}`,
			lines: linesOf(
				bmi && equation(bmi, 'kg/m2'),
				`At ${figure(months, 1)} months L ${figure(at.l, 4)}, M ${figure(at.m, 3)}, S ` +
					figure(at.s, 5),
				...(extended
					? [
							`Above the 95th centile (${figure(p95)} ${read.unit}), extended method: sigma ` +
								`${equation(sigma, '', 3)}; above it ${equation(spread, 'sigma')}; z ` +
								figure(centile.z),
						]
					: [`z: ${equation(lmsFormula(value, at))}`]),
				`Centile ${figure(centile.percentile, 1)}`,
			),
			basis: extended ? extendedCdc : cdc,
		},
	]
}
function allCentileWorkings(visit: Visit, { centiles }: Result): Working[] {
	const { statureCm, massKg } = bodySize(visit)
	const reads: Read[] = [
		{
			what: 'stature',
			title: 'stature',
			unit: 'cm',
			table: cdcStature,
			value: statureCm,
			centile: centiles.stature,
		},
		{
			what: 'mass',
			title: 'mass',
			unit: 'kg',
			table: cdcMass,
			value: massKg,
			centile: centiles.mass,
		},
		{
			what: 'bmi',
			title: 'body mass index',
			unit: 'kg/m2',
			table: cdcBmi,
			value: bmiOf(visit),
			centile: centiles.bmi,
		},
	]
	return reads.flatMap((read) => centileWorkings(visit, read))
}
function velocityWorkings({ velocity }: Result, protocol: Protocol): Working[] {
	if (!velocity) return []
	const { since, days, changeCm, trendOnly } = velocity
	const sdCm = protocol.value('growth.statureReadingSdCm')
	const trend = trendOnly
		? `; a trend only below ${protocol.value('growth.velocityTrendDays')} days`
		: ''
	return [
		{
			id: 'growth.velocity',
			title: 'Growth rate of stature',
			lines: [
				`Since ${since}, ${days} days: ${equation(perYear(changeCm, days), 'cm a year')}`,
				`Error, 95 %: ${equation(perYearError(sdCm, days), 'cm a year')}${trend}`,
			],
			basis: protocol.basis('growth rate between visits', 'growth.statureReadingSdCm'),
		},
	]
}
/** The workings about stature and body mass. */
export const statureWorkings = (visit: Visit, result: Result, protocol: Protocol): Working[] => [
	...adultWorkings(visit, result, protocol),
	...shareWorkings(visit, result, protocol),
	stageWorking(result, protocol),
	...allCentileWorkings(visit, result),
	...velocityWorkings(result, protocol),
]
