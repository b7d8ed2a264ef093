import type { GrowthResult } from '../findings/assessment.ts'
import { addDays, addMonths } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears, decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { longerFootMm } from './velocity.ts'

interface Rate {
	mmPerYear: number
	stopsAt: number
}
/**
 * Foot growth in mm a year and the age at which it stops: the mean, and the slow and fast edge of
 * the band.
 */
export function footRates(
	visit: Visit,
	protocol: Protocol,
): { mean: Rate; slow: Rate; fast: Rate } {
	const boy = visit.player.sex === 'male'
	const rate = protocol.value(boy ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm')
	const of = (factor: number, stopKey: ThresholdKey): Rate => ({
		mmPerYear: rate * factor,
		stopsAt: protocol.value(boy ? 'growth.footStopBoys' : stopKey),
	})
	return {
		mean: of(1, 'growth.footStopGirls'),
		slow: of(protocol.value('growth.footLowFactor'), 'growth.footStopEarlyGirls'),
		fast: of(protocol.value('growth.footHighFactor'), 'growth.footStopLateGirls'),
	}
}
/**
 * Length of the longer foot for the next twelve months, mm, at the mean rate until growth stops.
 * The band (half to one and a half times the rate) is a choice of width, not a measured spread.
 * @returns undefined at or past the plateau, or with no foot measured
 */
export function footForecast(visit: Visit, protocol: Protocol): GrowthResult['footForecast'] {
	const length = longerFootMm(visit)
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const { mean, slow, fast } = footRates(visit, protocol)
	if (length === undefined || age >= fast.stopsAt) return undefined
	return Array.from({ length: 12 }, (_, index) => {
		const date = addMonths(visit.visitDate, index + 1)
		const then = decimalAgeYears(visit.player.birthDate, date)
		const grown = ({ mmPerYear, stopsAt }: Rate) =>
			length + mmPerYear * Math.max(0, Math.min(then, stopsAt) - age)
		return { date, lengthMm: grown(mean), lowMm: grown(slow), highMm: grown(fast) }
	})
}

/**
 * The date by which to measure the feet again. @param footRateMmPerYear growth over the last
 * interval, if known
 */
export function measureAgainBy(
	visit: Visit,
	footRateMmPerYear: number | undefined,
	protocol: Protocol,
): string {
	if (
		footRateMmPerYear !== undefined &&
		footRateMmPerYear > protocol.value('growth.footFastMmPerYear')
	)
		return addDays(visit.visitDate, 7 * protocol.value('growth.againFastWeeks'))
	const young =
		ageYears(visit.player.birthDate, visit.visitDate) <
		protocol.value(visit.player.sex === 'male' ? 'growth.againAgeBoys' : 'growth.againAgeGirls')
	return addMonths(
		visit.visitDate,
		protocol.value(young ? 'growth.againMonths' : 'growth.againSlowMonths'),
	)
}
