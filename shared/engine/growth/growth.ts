/**
 * The growth room: maturity, adult stature, centiles, growth rate and foot forecast of a player
 * under 18.
 */

import type { GrowthResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { daysBetween } from '../plain/days.ts'
import { cdcBmi, cdcMass, cdcStature } from '../protocol/norms/cdc2000.table.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears as completedYears, decimalAgeYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { adultStature } from './adult.ts'
import { bmiCentile, centile } from './centiles.ts'
import { maturityEstimates } from './estimate.ts'
import { footForecast, measureAgainBy } from './forecast.ts'
import { methodFindings, stageMethod } from './method.ts'
import { finding, standingCautions } from './says.ts'
import { stage } from './stage.ts'
import { toeRoomFindings, toeRoomForecasts } from './toe-room.ts'
import { footGrowth, statureVelocity } from './velocity.ts'
import { growthWorkings } from './workings.ts'

const daysPerMonth = 30.4375

/**
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 * @returns undefined from 18 years; estimates that do not apply are absent, with a finding that
 * says why
 */
export function growth(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): GrowthResult | undefined {
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	if (
		completedYears(visit.player.birthDate, visit.visitDate) >=
		protocol.value('growth.adultFromYears')
	)
		return undefined
	const boy = visit.player.sex === 'male'
	const treated = visit.body?.growthOrHormoneTreatment === true
	const findings: Finding[] = []
	if (treated)
		findings.push(
			finding(
				'growth.treatment',
				'caution',
				'No maturity or adult stature estimate: with a growth disorder, steroid or hormone ' +
					'treatment the equations do not hold.',
				[],
				protocol.basis('growth treatment', 'growth.offsetErrorYears'),
			),
		)
	const estimates = treated
		? { offsets: {}, peakAges: {}, findings: [] }
		: maturityEstimates(visit, age, protocol)
	findings.push(...estimates.findings)
	const anyOffset = Object.keys(estimates.offsets).length > 0
	const low = protocol.value(boy ? 'growth.bestAgeMinBoys' : 'growth.bestAgeMinGirls'),
		high = protocol.value(boy ? 'growth.bestAgeMaxBoys' : 'growth.bestAgeMaxGirls')
	const shownAge = rounded(age, 2)
	if (anyOffset && (shownAge < low || shownAge > high))
		findings.push(
			finding(
				'growth.best-ages',
				'caution',
				`The maturity offset is most useful from ${low} to ${high} years in ` +
					`${boy ? 'boys' : 'girls'}; at ${shownAge} years expect a larger error.`,
				[{ measure: 'Age', value: shownAge, unit: 'years' }],
				protocol.basis(
					'best ages of the offset',
					shownAge < low
						? boy
							? 'growth.bestAgeMinBoys'
							: 'growth.bestAgeMinGirls'
						: boy
							? 'growth.bestAgeMaxBoys'
							: 'growth.bestAgeMaxGirls',
				),
			),
		)
	const adult = treated ? undefined : adultStature(visit, age, protocol, findings)
	const present = visit.body?.statureCm
	const percent = adult === undefined || present === undefined ? undefined : (100 * present) / adult
	const chosen = stageMethod(visit, earlier, protocol)
	const { band, findings: stageFindings } = stage(
		percent,
		chosen.offset === undefined ? undefined : estimates.offsets[chosen.offset],
		protocol,
	)
	const errorCm = protocol.value(
		boy ? 'growth.adultStatureErrorBoysCm' : 'growth.adultStatureErrorGirlsCm',
	)
	// An adult is never shorter than the player is now, and no share is above the whole.
	const ranges =
		adult === undefined || present === undefined
			? {}
			: {
					predictedAdultStatureRangeCm: {
						low: Math.max(present, adult - errorCm),
						high: adult + errorCm,
					},
					percentAdultStatureRange: {
						low: (100 * present) / (adult + errorCm),
						high: Math.min(100, (100 * present) / Math.max(present, adult - errorCm)),
					},
				}
	findings.push(
		...stageFindings,
		...methodFindings(chosen),
		...boundaryFindings(percent, ranges.percentAdultStatureRange, protocol),
	)
	const { velocity, findings: velocityFindings } = statureVelocity(visit, earlier, protocol)
	findings.push(...velocityFindings)
	const feet = footGrowth(visit, earlier, protocol),
		rate = feet?.mmPerYear
	if (feet && feet.mmPerYear > protocol.value('growth.footFastMmPerYear'))
		findings.push(
			finding(
				'growth.foot-fast',
				feet.real ? 'advise' : 'note',
				feet.real
					? 'The foot is growing fast. Foot growth often comes before the height spurt, about ' +
							'two years at group level: measure feet and stature again soon.'
					: `The foot may be growing fast, but the change since ${feet.since} is within ` +
							'measuring error: measure again soon.',
				[
					{ measure: 'Foot growth', value: rounded(feet.mmPerYear, 1), unit: 'mm/y' },
					{ measure: 'Change', value: rounded(feet.changeMm, 1), unit: 'mm' },
				],
				protocol.basis('fast foot growth', 'growth.footFastMmPerYear'),
			),
		)
	if (anyOffset || adult !== undefined) findings.push(...standingCautions(!boy, protocol))
	const forecast = footForecast(visit, protocol)
	if (forecast)
		findings.push(
			finding(
				'growth.foot-forecast',
				'note',
				'The foot forecast uses the mean growth of one group of children; the width of its band ' +
					'is a choice. Growth of one player cannot be foretold.',
				[],
				protocol.basis('foot forecast', boy ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm'),
			),
		)
	const again = measureAgainBy(visit, rate, protocol)
	const toeRoom = toeRoomForecasts(visit, protocol)
	findings.push(...toeRoomFindings(visit, toeRoom, again, protocol))
	const result = {
		decimalAgeYears: age,
		maturityOffsetYears: estimates.offsets,
		ageAtPeakHeightVelocityYears: estimates.peakAges,
		...(adult === undefined ? {} : { predictedAdultStatureCm: adult }),
		...(percent === undefined ? {} : { percentAdultStature: percent }),
		...ranges,
		band,
		...(chosen.method ? { method: chosen.method } : {}),
		centiles: centiles(visit, findings),
		...(velocity ? { velocity } : {}),
		...(forecast ? { footForecast: forecast } : {}),
		toeRoom,
		measureAgainBy: again,
		findings,
	}
	return { ...result, workings: growthWorkings(visit, result, feet, protocol) }
}

/** Says so where the error of the predicted stature reaches across the edge of a stage. */
function boundaryFindings(
	percent: number | undefined,
	range: GrowthResult['percentAdultStatureRange'],
	protocol: Protocol,
): Finding[] {
	if (percent === undefined || !range) return []
	const key = (['growth.percentAroundMin', 'growth.percentAroundMax'] as const).find(
		(one) => range.low < protocol.value(one) && range.high >= protocol.value(one),
	)
	return key
		? [
				finding(
					'growth.near-boundary',
					'note',
					`The share of adult stature is ${rounded(percent, 1)} %, good to between ` +
						`${rounded(range.low, 1)} and ${rounded(range.high, 1)} %: the stage is near the ` +
						`boundary at ${protocol.value(key)} %.`,
					[{ measure: 'Share of predicted adult stature', value: rounded(percent, 1), unit: '%' }],
					protocol.basis('near a boundary of the stages', key),
				),
			]
		: []
}

function centiles(visit: Visit, findings: Finding[]): GrowthResult['centiles'] {
	const { sex, birthDate } = visit.player
	const { statureCm, massKg } = visit.body ?? {}
	const months = daysBetween(birthDate, visit.visitDate) / daysPerMonth
	const stature = statureCm === undefined ? undefined : centile(cdcStature, sex, months, statureCm)
	const mass = massKg === undefined ? undefined : centile(cdcMass, sex, months, massKg)
	const bmi =
		statureCm === undefined || massKg === undefined
			? undefined
			: bmiCentile(cdcBmi, sex, months, massKg / (statureCm / 100) ** 2)
	if (statureCm !== undefined && stature === undefined)
		findings.push(
			finding(
				'growth.centile-age',
				'note',
				'No growth centiles: the reference table starts at 59.5 months of age.',
				[{ measure: 'Age', value: rounded(months, 1), unit: 'months' }],
				{
					rule: 'ages of the growth reference',
					source: 'CDC 2000 growth charts',
					strength: 'standard',
				},
			),
		)
	else if (stature ?? mass)
		findings.push(
			finding(
				'growth.centiles',
				'note',
				'Centiles of stature and mass are background for shoe fit and load, not a diagnosis.',
				[
					...(stature
						? [{ measure: 'Stature centile', value: rounded(stature.percentile, 0) }]
						: []),
					...(mass ? [{ measure: 'Mass centile', value: rounded(mass.percentile, 0) }] : []),
				],
				{ rule: 'growth centiles', source: 'CDC 2000 growth charts', strength: 'standard' },
			),
		)
	return { ...(stature ? { stature } : {}), ...(mass ? { mass } : {}), ...(bmi ? { bmi } : {}) }
}
