/** The growth room: maturity, adult stature, centiles, growth rate and foot forecast of a player under 18. */
import type { GrowthResult } from '../assessment.ts'
import type { Finding } from '../finding.ts'
import { cdcBmi, cdcMass, cdcStature } from '../protocol/norms/cdc2000.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears as completedYears, decimalAgeYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { khamisRocheCm } from './adult-stature.ts'
import { bmiCentile, centile } from './centiles.ts'
import { daysBetween } from './dates.ts'
import { maturityEstimates } from './estimate.ts'
import { footForecast, measureAgainBy } from './forecast.ts'
import { finding, standingCautions } from './says.ts'
import { stage } from './stage.ts'
import { footRate, statureVelocity } from './velocity.ts'

const daysPerMonth = 30.4375

/**
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 * @returns undefined from 18 years; estimates that do not apply are absent, with a finding that says why
 */
export function growth(visit: Visit, earlier: readonly Visit[], protocol: Protocol): GrowthResult | undefined {
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	if (completedYears(visit.player.birthDate, visit.visitDate) >= protocol.value('growth.adultFromYears')) return undefined
	const boy = visit.player.sex === 'male'
	const treated = visit.body?.growthOrHormoneTreatment === true
	const findings: Finding[] = []
	if (treated) findings.push(finding('growth.treatment', 'caution', 'No maturity or adult stature estimate: with a growth disorder, steroid or hormone treatment the equations do not hold.', [], protocol.basis('growth treatment', 'growth.offsetErrorYears')))
	const estimates = treated ? { offsets: {}, peakAges: {}, findings: [] } : maturityEstimates(visit, age, protocol)
	findings.push(...estimates.findings)
	const anyOffset = Object.keys(estimates.offsets).length > 0
	const low = protocol.value(boy ? 'growth.bestAgeMinBoys' : 'growth.bestAgeMinGirls'), high = protocol.value(boy ? 'growth.bestAgeMaxBoys' : 'growth.bestAgeMaxGirls')
	if (anyOffset && (age < low || age > high))
		findings.push(finding('growth.best-ages', 'caution', `The maturity offset is most useful from ${low} to ${high} years in ${boy ? 'boys' : 'girls'}; at ${rounded(age, 1)} years expect a larger error.`, [{ measure: 'Age', value: rounded(age, 1), unit: 'years' }], protocol.basis('best ages of the offset', age < low ? (boy ? 'growth.bestAgeMinBoys' : 'growth.bestAgeMinGirls') : boy ? 'growth.bestAgeMaxBoys' : 'growth.bestAgeMaxGirls')))
	const adult = treated ? undefined : adultStature(visit, age, protocol, findings)
	const present = visit.body?.statureCm
	const percent = adult === undefined || present === undefined ? undefined : (100 * present) / adult
	const offset = (estimates.offsets as GrowthResult['maturityOffsetYears']).mirwald ?? (estimates.offsets as GrowthResult['maturityOffsetYears']).moore
	const { band, findings: stageFindings } = stage(percent, offset, protocol)
	findings.push(...stageFindings, ...statureVelocity(visit, earlier, protocol))
	const rate = footRate(visit, earlier, protocol)
	if (rate !== undefined && rate > protocol.value('growth.footFastMmPerYear'))
		findings.push(finding('growth.foot-fast', 'advise', 'The foot is growing fast. Foot growth often comes before the height spurt: measure feet and stature again soon.', [{ measure: 'Foot growth', value: rounded(rate, 1), unit: 'mm/y' }], protocol.basis('fast foot growth', 'growth.footFastMmPerYear')))
	if (anyOffset || adult !== undefined) findings.push(...standingCautions(!boy, protocol))
	const forecast = footForecast(visit, protocol)
	if (forecast) findings.push(finding('growth.foot-forecast', 'note', 'The foot forecast uses the mean growth of one group of children; the width of its band is a choice. Growth of one player cannot be foretold.', [], protocol.basis('foot forecast', boy ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm')))
	return {
		decimalAgeYears: age,
		maturityOffsetYears: estimates.offsets,
		ageAtPeakHeightVelocityYears: estimates.peakAges,
		...(adult === undefined ? {} : { predictedAdultStatureCm: adult }),
		...(percent === undefined ? {} : { percentAdultStature: percent }),
		band,
		centiles: centiles(visit, findings),
		...(forecast ? { footForecast: forecast } : {}),
		measureAgainBy: measureAgainBy(visit, rate, protocol),
		findings,
	}
}

function adultStature(visit: Visit, ageYears: number, protocol: Protocol, findings: Finding[]): number | undefined {
	const { statureCm, massKg, motherStatureCm: motherCm, fatherStatureCm: fatherCm, parentStatures } = visit.body ?? {}
	const errorKey = visit.player.sex === 'male' ? 'growth.adultStatureErrorBoysCm' : 'growth.adultStatureErrorGirlsCm'
	const lacking = [statureCm === undefined && 'stature', massKg === undefined && 'body mass', motherCm === undefined && "mother's stature", fatherCm === undefined && "father's stature"].filter((one) => one !== false)
	if (statureCm === undefined || massKg === undefined || motherCm === undefined || fatherCm === undefined) {
		findings.push(finding('growth.adult-stature-missing', 'note', `Adult stature cannot be predicted: ${lacking.join(', ')} not recorded. Both parents are needed.`, [], protocol.basis('Khamis-Roche inputs', errorKey)))
		return undefined
	}
	const min = protocol.value('growth.adultStatureAgeMin'), max = protocol.value('growth.adultStatureAgeMax')
	const raw = ageYears < min || ageYears > max ? undefined : khamisRocheCm({ sex: visit.player.sex, ageYears, statureCm, massKg, motherCm, fatherCm, reported: parentStatures === 'reported' })
	if (raw === undefined) {
		findings.push(finding('growth.adult-stature-age', 'note', `Adult stature is not predicted at ${rounded(ageYears, 1)} years: the table runs from ${min} to ${max} years.`, [{ measure: 'Age', value: rounded(ageYears, 1), unit: 'years' }], protocol.basis('ages of the Khamis-Roche table', ageYears < min ? 'growth.adultStatureAgeMin' : 'growth.adultStatureAgeMax')))
		return undefined
	}
	const value = Math.max(raw, statureCm)
	const error = protocol.value(errorKey)
	findings.push(finding('growth.adult-stature', 'note', `Predicted adult stature about ${rounded(value, 0)} cm, nine times in ten within ${error} cm.${raw < statureCm ? ' The equation gave less than the present stature, which is used instead.' : ''}${parentStatures === 'reported' ? " The parents' reported statures were adjusted for the usual overstatement." : ''}`,
		[{ measure: 'Predicted adult stature', value: rounded(raw, 1), unit: 'cm' }, { measure: 'Lower bound', value: rounded(value - error, 1), unit: 'cm' }, { measure: 'Upper bound', value: rounded(value + error, 1), unit: 'cm' }], protocol.basis('Khamis-Roche, weights of the 1995 erratum', errorKey)))
	return value
}

function centiles(visit: Visit, findings: Finding[]): GrowthResult['centiles'] {
	const { sex, birthDate } = visit.player
	const { statureCm, massKg } = visit.body ?? {}
	const months = daysBetween(birthDate, visit.visitDate) / daysPerMonth
	const stature = statureCm === undefined ? undefined : centile(cdcStature, sex, months, statureCm)
	const mass = massKg === undefined ? undefined : centile(cdcMass, sex, months, massKg)
	const bmi = statureCm === undefined || massKg === undefined ? undefined : bmiCentile(cdcBmi, sex, months, massKg / (statureCm / 100) ** 2)
	if (statureCm !== undefined && stature === undefined) findings.push(finding('growth.centile-age', 'note', 'No growth centiles: the reference table starts at 59.5 months of age.', [{ measure: 'Age', value: rounded(months, 1), unit: 'months' }], { rule: 'ages of the growth reference', source: 'CDC 2000 growth charts', strength: 'standard' }))
	else if (stature ?? mass) findings.push(finding('growth.centiles', 'note', 'Centiles of stature and mass are background for shoe fit and load, not a diagnosis.', [...(stature ? [{ measure: 'Stature centile', value: rounded(stature.percentile, 0) }] : []), ...(mass ? [{ measure: 'Mass centile', value: rounded(mass.percentile, 0) }] : [])], { rule: 'growth centiles', source: 'CDC 2000 growth charts', strength: 'standard' }))
	return { ...(stature ? { stature } : {}), ...(mass ? { mass } : {}), ...(bmi ? { bmi } : {}) }
}
