/** The growth room's numbers, each with its formula and this player's values put in. */

import type { Centile, GrowthResult } from '../findings/assessment.ts'
import { idPart, type Working } from '../findings/finding.ts'
import { daysBetween } from '../plain/days.ts'
import { quantileAbove } from '../plain/normal.ts'
import type { Basis } from '../protocol/basis.ts'
import { cdcBmi, cdcMass, cdcStature, type LmsTable } from '../protocol/norms/cdc2000.table.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { tableAgeYears } from './adult.ts'
import { adjustedParentCm, khamisRocheAt } from './adult-stature.ts'
import { lmsAt, valueAt } from './centiles.ts'
import { methodNames } from './estimate.ts'
import { footRates } from './forecast.ts'
import { fransenRatioBoys } from './maturity.ts'
import { stageMethodNames } from './method.ts'
import { leastKey } from './toe-room.ts'
import { type FootGrowth, longerFootMm } from './velocity.ts'

const n = (value: number, digits = 2): string => String(rounded(value, digits))
const cdc: Basis = {
	rule: 'growth centiles',
	source:
		'CDC 2000 growth charts (Kuczmarski et al. 2002); LMS method, Cole and Green, Stat Med ' +
		'1992;11:1305-1319',
	strength: 'standard',
}
const errorKeys = {
	mirwald: { male: 'growth.mirwaldErrorBoys', female: 'growth.mirwaldErrorGirls' },
	moore: { male: 'growth.mooreErrorBoys', female: 'growth.mooreErrorGirls' },
	mooreSitting: { male: 'growth.mooreSittingErrorBoys', female: 'growth.mooreSittingErrorBoys' },
} as const satisfies Record<string, Record<'male' | 'female', ThresholdKey>>

/** The equation of each method with age a, stature h, sitting height sh and mass m put in. */
function equations(
	sex: 'male' | 'female',
	a: number,
	h = 0,
	sh = 0,
	m = 0,
): Record<keyof GrowthResult['maturityOffsetYears'], string[]> {
	const age = n(a, 4),
		leg = n(h - sh, 1)
	return {
		mirwald: [
			`Leg length = ${n(h, 1)} - ${n(sh, 1)} = ${leg} cm; mass / stature x 100 = ${n(m, 1)} / ` +
				`${n(h, 1)} x 100 = ${n((100 * m) / h)}`,
			sex === 'male'
				? `-9.236 + 0.0002708 x ${leg} x ${n(sh, 1)} - 0.001663 x ${age} x ${leg} + 0.007216 x ` +
					`${age} x ${n(sh, 1)} + 0.02292 x ${n((100 * m) / h)}`
				: `-9.376 + 0.0001882 x ${leg} x ${n(sh, 1)} + 0.0022 x ${age} x ${leg} + 0.005841 x ` +
					`${age} x ${n(sh, 1)} - 0.002658 x ${age} x ${n(m, 1)} + 0.07693 x ` +
					`${n((100 * m) / h)}`,
		],
		moore: [
			sex === 'male'
				? `-7.999994 + 0.0036124 x ${age} x ${n(h, 1)}`
				: `-7.709133 + 0.0042232 x ${age} x ${n(h, 1)}`,
		],
		mooreSitting: [`-8.128741 + 0.0070346 x ${age} x ${n(sh, 1)}`],
		fransen: [
			`6.986547255416 + 0.115802846632 x ${age} + 0.001450825199 x ${age} squared + ` +
				`0.004518400406 x ${n(m, 1)} - 0.000034086447 x ${n(m, 1)} squared - 0.151951447289 x ` +
				`${n(h, 1)} + 0.000932836659 x ${n(h, 1)} squared - 0.000001656585 x ${n(h, 1)} cubed + ` +
				`0.032198263733 x ${leg} - 0.000269025264 x ${leg} squared - 0.000760897942 x ${n(h, 1)} ` +
				`x ${age}`,
			`Maturity ratio from age ${age}, stature ${n(h, 1)}, leg ${leg} and mass ${n(m, 1)}: ` +
				`${n(fransenRatioBoys({ ageYears: a, statureCm: h, sittingHeightCm: sh, massKg: m }), 4)}`,
			'Age at peak height velocity = age / ratio; offset = age less that',
		],
	}
}
/**
 * @param result the room's result without workings; @param feet foot growth since an earlier visit
 */
export function growthWorkings(
	visit: Visit,
	result: Omit<GrowthResult, 'workings'>,
	feet: FootGrowth | undefined,
	protocol: Protocol,
): Working[] {
	const { sex, birthDate } = visit.player,
		{
			statureCm: h,
			sittingHeightCm: sh,
			massKg: m,
			motherStatureCm,
			fatherStatureCm,
			parentStatures,
		} = visit.body ?? {}
	const made: Working[] = [],
		age = result.decimalAgeYears,
		boy = sex === 'male',
		days = daysBetween(birthDate, visit.visitDate)
	const add = (what: string, title: string, lines: string[], basis: Basis) =>
		made.push({ id: `growth.${what}`, title, lines, basis })
	const limit = (key: ThresholdKey) => protocol.value(key)
	add(
		'age',
		'Decimal age',
		[`${days} days / 365.25 = ${n(age, 4)} years; / 30.4375 = ${n(days / 30.4375, 1)} months`],
		{
			rule: 'decimal age',
			source:
				'convention of the growth equations (days / 365.25) and of the growth charts (days / ' +
				'30.4375)',
			strength: 'standard',
		},
	)
	const lines = equations(sex, age, h, sh, m)
	for (const method of ['mirwald', 'moore', 'mooreSitting', 'fransen'] as const) {
		const offset = result.maturityOffsetYears[method],
			peak = result.ageAtPeakHeightVelocityYears[method]
		if (offset === undefined || peak === undefined) continue
		const key = method === 'fransen' ? undefined : errorKeys[method][sex]
		const ages =
			method === 'fransen'
				? [limit('growth.fransenAgeMin'), limit('growth.fransenAgeMax')]
				: [
						limit(boy ? 'growth.offsetAgeMinBoys' : 'growth.offsetAgeMinGirls'),
						limit(boy ? 'growth.offsetAgeMaxBoys' : 'growth.offsetAgeMaxGirls'),
					]
		if (method === 'moore' || method === 'mooreSitting')
			ages.splice(
				0,
				2,
				Math.max(ages[0]!, limit('growth.mooreAgeMin')),
				Math.min(ages[1]!, limit('growth.mooreAgeMax')),
			)
		add(
			`offset-${method.toLowerCase()}`,
			`Maturity offset, ${methodNames[method]}`,
			[
				...lines[method],
				`Offset ${n(offset, 1)} years; age at peak height velocity ${n(age, 1)} - ` +
					`(${n(offset, 1)}) = ${n(peak, 1)} years, to the one decimal that the error bears out`,
				`${key ? `Error ${limit(key)} years (one standard error)` : 'No standard error is published'}; ` +
					`ages ${ages[0]} to ${ages[1]}${method === 'fransen' ? ', boys only' : ''}`,
				'Known bias: late in early maturers, early in late maturers, and later with age',
			],
			key
				? protocol.basis(`maturity offset, ${methodNames[method]}`, key)
				: {
						rule: 'maturity ratio, boys',
						source: 'Fransen et al., Pediatr Exerc Sci 2018;30(2):296-307',
						strength: 'cohort',
					},
		)
	}
	const {
		predictedAdultStatureCm: adult,
		predictedAdultStatureRangeCm: range,
		percentAdultStature: percent,
		percentAdultStatureRange: share,
	} = result
	const tableAge = tableAgeYears(age, protocol),
		at = tableAge === undefined ? undefined : khamisRocheAt(sex, tableAge)
	if (
		at &&
		adult !== undefined &&
		range &&
		percent !== undefined &&
		share &&
		h !== undefined &&
		m !== undefined &&
		motherStatureCm !== undefined &&
		fatherStatureCm !== undefined
	) {
		const reported = parentStatures === 'reported',
			mother = reported ? adjustedParentCm('mother', motherStatureCm) : motherStatureCm,
			father = reported ? adjustedParentCm('father', fatherStatureCm) : fatherStatureCm
		const parents = (mother + father) / 2 / 2.54,
			raw =
				at.constant +
				at.stature * (h / 2.54) +
				at.weight * (m / 0.45359237) +
				at.midparent * parents
		const medianKey: ThresholdKey = boy
				? 'growth.adultStatureMedianBoysCm'
				: 'growth.adultStatureMedianGirlsCm',
			errorKey: ThresholdKey = boy
				? 'growth.adultStatureErrorBoysCm'
				: 'growth.adultStatureErrorGirlsCm'
		add(
			'adult-stature',
			'Predicted adult stature, Khamis-Roche',
			[
				...(reported
					? [
							`Reported statures adjusted: mother 2.803 + 0.953 x ${n(motherStatureCm / 2.54)} ` +
								`in = ${n(mother, 1)} cm; father 2.316 + 0.955 x ${n(fatherStatureCm / 2.54)} in ` +
								`= ${n(father, 1)} cm (from memory)`,
						]
					: []),
				`Stature ${n(h / 2.54)} in, mass ${n(m / 0.45359237)} lb, midparent (${n(mother, 1)} + ` +
					`${n(father, 1)}) / 2 / 2.54 = ${n(parents)} in`,
				`${n(at.constant, 4)} + ${n(at.stature, 4)} x ${n(h / 2.54)} + (${n(at.weight, 5)}) x ` +
					`${n(m / 0.45359237)} + ${n(at.midparent, 4)} x ${n(parents)} = ${n(raw)} in = ` +
					`${n(raw * 2.54, 1)} ` +
					`cm${raw * 2.54 < h ? `, below the present stature: ${n(h, 1)} cm is used` : ''}`,
				`Median error ${limit(medianKey)} cm; nine in ten within ${limit(errorKey)} cm: ` +
					`${n(range.low, 1)} to ${n(range.high, 1)} cm`,
			],
			protocol.basis('Khamis-Roche, weights of the 1995 erratum', errorKey),
		)
		add(
			'percent-adult-stature',
			'Share of predicted adult stature',
			[
				`100 x ${n(h, 1)} / ${n(adult, 1)} = ${n(percent, 1)} %; by the prediction error ` +
					`${n(share.low, 1)} to ${n(share.high, 1)} %`,
				`Around the spurt from ${limit('growth.percentAroundMin')} to ` +
					`${limit('growth.percentAroundMax')} %`,
			],
			protocol.basis('growth stage', 'growth.percentAroundMin'),
		)
	}
	add(
		'stage',
		'Growth stage',
		[
			`Band: ${result.band}; rests on: ` +
				`${result.method ? stageMethodNames[result.method] : 'nothing, too few measures'}`,
			'Share of adult stature first, else the offset; where the two disagree, uncertain',
		],
		protocol.basis(
			'growth stage',
			result.method === 'percentAdultStature'
				? 'growth.percentAroundMin'
				: 'growth.offsetAroundYears',
		),
	)
	const months = days / 30.4375,
		bmi = h === undefined || m === undefined ? undefined : m / (h / 100) ** 2
	const tables: [
		keyof GrowthResult['centiles'],
		LmsTable,
		number | undefined,
		Centile | undefined,
		string,
	][] = [
		['stature', cdcStature, h, result.centiles.stature, 'cm'],
		['mass', cdcMass, m, result.centiles.mass, 'kg'],
		['bmi', cdcBmi, bmi, result.centiles.bmi, 'kg/m2'],
	]
	for (const [what, table, value, centile, unit] of tables) {
		const at = lmsAt(table, sex, months)
		if (value === undefined || !centile || !at) continue
		const p95 = valueAt(quantileAbove(0.05), at),
			extended = what === 'bmi' && value > p95
		add(
			`centile-${what}`,
			`Centile of ${what === 'bmi' ? 'body mass index' : what}`,
			[
				...(what === 'bmi'
					? [`${n(m!, 1)} / (${n(h! / 100, 3)} x ${n(h! / 100, 3)}) = ${n(value)} kg/m2`]
					: []),
				`At ${n(months, 1)} months L ${n(at.l, 4)}, M ${n(at.m, 3)}, S ${n(at.s, 5)}`,
				extended
					? `Above the 95th centile (${n(p95)} ${unit}): extended method, z = ${n(centile.z)}`
					: `z = ((${n(value)} / ${n(at.m, 3)}) to the power ${n(at.l, 4)} - 1) / ` +
						`(${n(at.l, 4)} x ${n(at.s, 5)}) = ${n(centile.z)}`,
				`Centile ${n(centile.percentile, 1)}`,
			],
			extended
				? {
						...cdc,
						source: 'CDC 2000, extended BMI method, Wei 2020, doi 10.1080/03014460.2020.1808065',
					}
				: cdc,
		)
	}
	if (result.velocity) {
		const { since, days: gap, cmPerYear, errorCmPerYear, trendOnly } = result.velocity,
			sd = limit('growth.statureReadingSdCm')
		add(
			'velocity',
			'Growth rate of stature',
			[
				`${n((cmPerYear * gap) / 365.25)} cm since ${since} / (${gap} days / 365.25) = ` +
					`${n(cmPerYear)} cm a year`,
				`Error, 95 %: 1.96 x 1.414 x ${sd} / (${gap} / 365.25) = ${n(errorCmPerYear)} cm a ` +
					`year${trendOnly ? `; a trend only below ${limit('growth.velocityTrendDays')} days` : ''}`,
			],
			protocol.basis('growth rate between visits', 'growth.statureReadingSdCm'),
		)
	}
	const { mean, slow, fast } = footRates(visit, protocol),
		rateBasis = protocol.basis(
			'foot forecast',
			boy ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm',
		)
	const last = result.footForecast?.at(-1)
	if (last)
		add(
			'foot-forecast',
			'Foot-length forecast',
			[
				`Longer foot now ${n(longerFootMm(visit)!, 1)} mm; mean ${n(mean.mmPerYear)} mm a year ` +
					`until ${mean.stopsAt} years, band ${n(slow.mmPerYear)} to ${n(fast.mmPerYear)} mm a ` +
					'year',
				`On ${last.date}: ${n(last.lengthMm, 1)} mm (${n(last.lowMm, 1)} to ${n(last.highMm, 1)})`,
			],
			rateBasis,
		)
	const pairs = visit.footwear ?? []
	for (const { id, toeRoomMm, leastMm, state, runsOutOn, earliest, latest } of result.toeRoom) {
		const index = pairs.findIndex((pair) => pair.id === id),
			pair = pairs[index]!
		add(
			`toe-room-${idPart(id, index)}`,
			`Toe room of ${pair.name ?? id}`,
			[
				`Inside ${n(pair.insideLengthMm!, 1)} - foot ${n(longerFootMm(visit)!, 1)} - sock ` +
					`${n(visit.feet?.sockMm ?? 0, 1)} = ${n(toeRoomMm, 1)} mm; least ${leastMm} mm`,
				...(visit.feet?.stance === 'seated'
					? ['The feet were measured seated: the true room is up to about 3 mm less']
					: []),
				state === 'already-short'
					? 'Already below the limit'
					: state === 'lasts'
						? 'Lasts until the foot stops growing'
						: `(${n(toeRoomMm, 1)} - ${leastMm}) / ${n(mean.mmPerYear)} mm a year = ` +
							`${n((12 * (toeRoomMm - leastMm)) / mean.mmPerYear, 1)} months: ` +
							`${runsOutOn ?? 'not before the foot stops growing'}; earliest ` +
							`${earliest ?? 'none'}, latest ${latest ?? 'none'}`,
			],
			protocol.basis('toe room of a growing foot', leastKey(pair)),
		)
	}
	if (feet)
		add(
			'foot-growth',
			'Growth of the longer foot',
			[
				`${n(feet.changeMm, 1)} mm since ${feet.since} / (${feet.days} days / 365.25) = ` +
					`${n(feet.mmPerYear, 1)} mm a year`,
				feet.real ? 'Beyond measuring error' : 'Within measuring error',
			],
			protocol.basis('smallest real change', 'sizing.realLengthSameMm'),
		)
	if (result.measureAgainBy) {
		const young =
				ageYears(birthDate, visit.visitDate) <
				limit(boy ? 'growth.againAgeBoys' : 'growth.againAgeGirls'),
			quick = feet !== undefined && feet.mmPerYear > limit('growth.footFastMmPerYear')
		const key: ThresholdKey = quick
			? 'growth.againFastWeeks'
			: young
				? 'growth.againMonths'
				: 'growth.againSlowMonths'
		add(
			'measure-again',
			'Measure again by',
			[
				`${quick ? `The foot grew more than ${limit('growth.footFastMmPerYear')} mm a year: ${limit(key)} weeks` : `${limit(key)} months at this age`} ` +
					`from ${visit.visitDate} = ${result.measureAgainBy}`,
			],
			protocol.basis('measure again', key),
		)
	}
	return made
}
