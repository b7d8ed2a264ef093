/** How far the foot has to grow, and when it is measured again. */
import type { GrowthResult } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import { exactly, type Formula, plus, quantity, times } from '../findings/formula.ts'
import { addDays, addMonths } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears, decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { growthFinding } from './says.ts'
import { longerFootMm } from './velocity.ts'

/** The row of the mean growth of the foot, for this player's sex. */
export const footRateKey = ({ player }: Visit): ThresholdKey =>
	player.sex === 'male' ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm'

export interface Rate {
	mmPerYear: number
	/** How it comes from the mean rate. */
	formula: Formula
	stopsAt: number
}
/**
 * Whether the player has not passed the growth spurt, as far as a stage is known: the foot may then
 * grow on past the age at which most feet stop.
 */
export const growsOn = ({ band, stageKnown }: Pick<GrowthResult, 'band' | 'stageKnown'>): boolean =>
	band === 'before' || band === 'around' || (band === 'uncertain' && stageKnown === true)
/**
 * Foot growth in mm a year and the age at which it stops: the mean, and the slow and fast edge of
 * the band. @param late the player has not passed the growth spurt: mean and fast edge then reach
 * some time past today
 */
export function footRates(
	visit: Visit,
	protocol: Protocol,
	late = false,
): { mean: Rate; slow: Rate; fast: Rate } {
	const boy = visit.player.sex === 'male'
	const rate = protocol.value(footRateKey(visit))
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const stillYears = late ? age + protocol.value('growth.footLateYears') : 0
	const of = (factor: number, stopKey: ThresholdKey, leastAge: number): Rate => {
		const formula = times(exactly(rate), exactly(factor))
		const usual = protocol.value(boy ? 'growth.footStopBoys' : stopKey)
		return { mmPerYear: formula.value, formula, stopsAt: Math.max(usual, leastAge) }
	}
	return {
		mean: of(1, 'growth.footStopGirls', stillYears),
		// the slow edge may have stopped already
		slow: of(protocol.value('growth.footLowFactor'), 'growth.footStopEarlyGirls', 0),
		fast: of(protocol.value('growth.footHighFactor'), 'growth.footStopLateGirls', stillYears),
	}
}
/** Length of a foot, mm, at an age, years: it grows at a rate until it stops. */
export const lengthAt = (
	lengthMm: number,
	{ mmPerYear, stopsAt }: Rate,
	ageYears: number,
	thenYears: number,
): Formula =>
	plus(
		quantity(lengthMm, 1),
		times(quantity(mmPerYear), quantity(Math.max(0, Math.min(thenYears, stopsAt) - ageYears), 3)),
	)
/**
 * Length of the longer foot for the next twelve months, mm, at the mean rate until growth stops.
 * The band (half to one and a half times the rate) is a choice of width, not a measured spread.
 * @returns undefined at or past the plateau, or with no foot measured
 */
export function footForecast(
	visit: Visit,
	protocol: Protocol,
	late = false,
): GrowthResult['footForecast'] {
	const length = longerFootMm(visit)
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const { mean, slow, fast } = footRates(visit, protocol, late)
	if (length === undefined || age >= fast.stopsAt) return undefined
	return Array.from({ length: 12 }, (_, index) => {
		const date = addMonths(visit.visitDate, index + 1)
		const then = decimalAgeYears(visit.player.birthDate, date)
		const grown = (at: Rate) => lengthAt(length, at, age, then).value
		return { date, lengthMm: grown(mean), lowMm: grown(slow), highMm: grown(fast) }
	})
}

/** What the forecast rests on, wherever there is one. */
export function forecastFindings(
	visit: Visit,
	forecast: GrowthResult['footForecast'],
	protocol: Protocol,
): Finding[] {
	if (!forecast) return []
	return [
		growthFinding(
			state('growth.foot-forecast'),
			'note',
			[],
			protocol.basis('foot forecast', footRateKey(visit)),
		),
	]
}
/**
 * The row that says when to measure the feet again: sooner where the foot grew fast, later where
 * the player is older and past the growth spurt. @param footRateMmPerYear growth over the last
 * interval, if known
 */
export function againKey(
	visit: Visit,
	footRateMmPerYear: number | undefined,
	protocol: Protocol,
	late = false,
): 'growth.againFastWeeks' | 'growth.againMonths' | 'growth.againSlowMonths' {
	const fast = protocol.value('growth.footFastMmPerYear')
	if (footRateMmPerYear !== undefined && footRateMmPerYear > fast) return 'growth.againFastWeeks'
	const { sex, birthDate } = visit.player
	const untilAge = protocol.value(sex === 'male' ? 'growth.againAgeBoys' : 'growth.againAgeGirls')
	return late || ageYears(birthDate, visit.visitDate) < untilAge
		? 'growth.againMonths'
		: 'growth.againSlowMonths'
}
/** The date by which to measure the feet again, by the row of `againKey`. */
export function measureAgainBy(
	visit: Visit,
	footRateMmPerYear: number | undefined,
	protocol: Protocol,
	late = false,
): string {
	const key = againKey(visit, footRateMmPerYear, protocol, late)
	return key === 'growth.againFastWeeks'
		? addDays(visit.visitDate, 7 * protocol.value(key))
		: addMonths(visit.visitDate, protocol.value(key))
}
