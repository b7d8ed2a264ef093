/**
 * The growth room: maturity, adult stature, centiles, growth rate and foot forecast of a player
 * under 18.
 */
import { isAdult } from '../facts/age.ts'
import type { GrowthResult, Range } from '../findings/assessment.ts'
import { type Finding, reading } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { adultErrorKey, adultStature, hasKnownError, shareOfAdult } from './adult.ts'
import { centileFindings, centilesOf } from './centiles-of-visit.ts'
import { type Estimates, maturityEstimates } from './estimate.ts'
import { footForecast, forecastFindings, growsOn, measureAgainBy } from './forecast.ts'
import { methodFindings, stageMethod } from './method.ts'
import { growthFinding, standingCautions } from './says.ts'
import { stage } from './stage.ts'
import { toeRoomFindings, toeRoomForecasts } from './toe-room.ts'
import { isTreated, treatmentFindings } from './treated.ts'
import { footFastFindings, footGrowth, statureVelocity } from './velocity.ts'
import { growthWorkings } from './workings.ts'

const bestAges = {
	male: ['growth.bestAgeMinBoys', 'growth.bestAgeMaxBoys'],
	female: ['growth.bestAgeMinGirls', 'growth.bestAgeMaxGirls'],
} as const
/** Whether the player is of the ages at which an offset is most useful. */
function isOfBestAge({ player }: Visit, ageYears: number, protocol: Protocol): boolean {
	const [lowKey, highKey] = bestAges[player.sex]
	const shown = rounded(ageYears, 2)
	return shown >= protocol.value(lowKey) && shown <= protocol.value(highKey)
}
/** A caution where an offset stands outside the ages at which it is most useful. */
function bestAgeFindings(
	visit: Visit,
	ageYears: number,
	{ offsets }: Estimates,
	protocol: Protocol,
): Finding[] {
	const { sex } = visit.player
	const [lowKey, highKey] = bestAges[sex]
	const [low, high] = [protocol.value(lowKey), protocol.value(highKey)]
	const shownAge = rounded(ageYears, 2)
	if (Object.keys(offsets).length === 0 || isOfBestAge(visit, ageYears, protocol)) return []
	return [
		growthFinding(
			state('growth.best-ages', { sex, ageYears: shownAge, low, high }),
			'note',
			[{ measure: 'ageYears', value: shownAge, unit: 'years' }],
			protocol.basis('best ages of the offset', shownAge < low ? lowKey : highKey),
		),
	]
}
/** Share of the adult stature reached, and the ranges that the error of the prediction gives. */
interface AdultShare {
	percent?: number
	predictedAdultStatureRangeCm?: Range
	percentAdultStatureRange?: Range
}
function adultShare(visit: Visit, predictedCm: number | undefined, protocol: Protocol): AdultShare {
	const { statureCm: nowCm } = bodySize(visit)
	if (predictedCm === undefined || nowCm === undefined) return {}
	const percent = shareOfAdult(nowCm, predictedCm).value
	if (!hasKnownError(visit)) return { percent }
	const errorCm = protocol.value(adultErrorKey(visit))
	// An adult is never shorter than the player is now, and no share is above the whole.
	const lowCm = Math.max(nowCm, predictedCm - errorCm)
	const highCm = predictedCm + errorCm
	return {
		percent,
		predictedAdultStatureRangeCm: { low: lowCm, high: highCm },
		percentAdultStatureRange: {
			low: shareOfAdult(nowCm, highCm).value,
			high: Math.min(100, shareOfAdult(nowCm, lowCm).value),
		},
	}
}
/** Says so where the error of the predicted stature reaches across the edge of a stage. */
function boundaryFindings(
	{ percent, percentAdultStatureRange: range }: AdultShare,
	protocol: Protocol,
): Finding[] {
	if (percent === undefined || !range) return []
	const key = (['growth.percentAroundMin', 'growth.percentAroundMax'] as const).find(
		(edge) => range.low < protocol.value(edge) && range.high >= protocol.value(edge),
	)
	if (!key) return []
	const shown = {
		percent: rounded(percent, 1),
		low: rounded(range.low, 1),
		high: rounded(range.high, 1),
	}
	return [
		growthFinding(
			state('growth.near-boundary', { ...shown, boundaryPercent: protocol.value(key) }),
			'note',
			[reading('percentAdultStature', percent, '%')],
			protocol.basis('near a boundary of the stages', key),
		),
	]
}
/** Maturity and adult stature: what the stage rests on. */
function maturity(visit: Visit, earlier: readonly Visit[], ageYears: number, protocol: Protocol) {
	const treated = isTreated(visit)
	const estimates: Estimates = treated
		? { offsets: {}, peakAges: {}, findings: [] }
		: maturityEstimates(visit, ageYears, protocol)
	const adult = treated ? { findings: [] } : adultStature(visit, ageYears, protocol)
	const share = adultShare(visit, adult.predictedCm, protocol)
	const chosen = stageMethod(visit, earlier, protocol)
	const offset = chosen.offset && estimates.offsets[chosen.offset]
	const reached = stage(share.percent, offset, protocol, isOfBestAge(visit, ageYears, protocol))
	return {
		estimates,
		adultCm: adult.predictedCm,
		share,
		reached,
		method: chosen.method,
		findings: [
			...treatmentFindings(visit),
			...estimates.findings,
			...bestAgeFindings(visit, ageYears, estimates, protocol),
			...adult.findings,
			...reached.findings,
			...methodFindings(chosen),
			...boundaryFindings(share, protocol),
		],
	}
}
/**
 * @param visit a parsed visit; @param earlier the player's earlier visits, any order
 * @param fitLengthMm length to fit of the sizing room, mm: toe room is counted from it
 * @returns undefined from 18 years; estimates that do not apply are absent, with a finding that
 * says why
 */
export function growth(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	fitLengthMm?: number,
): GrowthResult | undefined {
	const { birthDate, sex } = visit.player
	if (isAdult(visit, protocol)) return undefined
	const ageYears = decimalAgeYears(birthDate, visit.visitDate)
	const { estimates, adultCm, share, reached, method, findings } = maturity(
		visit,
		earlier,
		ageYears,
		protocol,
	)
	const { velocity, findings: velocityFindings } = statureVelocity(visit, earlier, protocol)
	const feet = footGrowth(visit, earlier, protocol)
	const late = growsOn(reached)
	const forecast = footForecast(visit, protocol, late)
	const again = measureAgainBy(visit, feet?.mmPerYear, protocol, late)
	const pairs = toeRoomForecasts(visit, late, fitLengthMm, protocol)
	const centiles = centilesOf(visit)
	const estimated = Object.keys(estimates.offsets).length > 0 || adultCm !== undefined
	const result = present({
		decimalAgeYears: ageYears,
		maturityOffsetYears: estimates.offsets,
		ageAtPeakHeightVelocityYears: estimates.peakAges,
		predictedAdultStatureCm: adultCm,
		percentAdultStature: share.percent,
		predictedAdultStatureRangeCm: share.predictedAdultStatureRangeCm,
		percentAdultStatureRange: share.percentAdultStatureRange,
		band: reached.band,
		stageKnown: reached.stageKnown,
		aroundSpurt: reached.aroundSpurt,
		method,
		centiles,
		velocity,
		footForecast: forecast,
		toeRoom: pairs.map(({ forecast: pairForecast }) => pairForecast),
		measureAgainBy: again,
		findings: [
			...findings,
			...velocityFindings,
			...footFastFindings(feet, protocol),
			...(estimated ? standingCautions(sex === 'female', protocol) : []),
			...forecastFindings(visit, forecast, protocol),
			...toeRoomFindings(pairs, again, protocol),
			...centileFindings(visit, centiles),
		],
	})
	return { ...result, workings: growthWorkings(visit, result, feet, pairs, protocol) }
}
