import type { GrowthResult } from '../assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { addDays, addMonths } from './dates.ts'
import { longerFootMm } from './velocity.ts'

/**
 * Length of the longer foot for the next twelve months, mm, at the mean rate until growth stops.
 * The band (half to one and a half times the rate) is a choice of width, not a measured spread.
 * @returns undefined at or past the plateau, or with no foot measured
 */
export function footForecast(visit: Visit, protocol: Protocol): GrowthResult['footForecast'] {
	const length = longerFootMm(visit)
	const boy = visit.player.sex === 'male'
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const rate = protocol.value(boy ? 'growth.footRateBoysMm' : 'growth.footRateGirlsMm')
	const stops = boy ? ([protocol.value('growth.footStopBoys'), protocol.value('growth.footStopBoys'), protocol.value('growth.footStopBoys')] as const)
		: ([protocol.value('growth.footStopEarlyGirls'), protocol.value('growth.footStopGirls'), protocol.value('growth.footStopLateGirls')] as const)
	if (length === undefined || age >= stops[2]) return undefined
	return Array.from({ length: 12 }, (_, index) => {
		const date = addMonths(visit.visitDate, index + 1)
		const then = decimalAgeYears(visit.player.birthDate, date)
		const grown = (stop: number, factor: number) => length + rate * factor * Math.max(0, Math.min(then, stop) - age)
		return { date, lengthMm: grown(stops[1], 1), lowMm: grown(stops[0], protocol.value('growth.footLowFactor')), highMm: grown(stops[2], protocol.value('growth.footHighFactor')) }
	})
}

/** The date by which to measure the feet again. @param footRateMmPerYear growth over the last interval, if known */
export function measureAgainBy(visit: Visit, footRateMmPerYear: number | undefined, protocol: Protocol): string {
	if (footRateMmPerYear !== undefined && footRateMmPerYear > protocol.value('growth.footFastMmPerYear')) return addDays(visit.visitDate, 7 * protocol.value('growth.againFastWeeks'))
	const young = decimalAgeYears(visit.player.birthDate, visit.visitDate) < protocol.value(visit.player.sex === 'male' ? 'growth.againAgeBoys' : 'growth.againAgeGirls')
	return addMonths(visit.visitDate, protocol.value(young ? 'growth.againMonths' : 'growth.againSlowMonths'))
}
