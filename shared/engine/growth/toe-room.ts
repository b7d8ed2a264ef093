/** When a growing foot uses up the toe room of the pairs whose inside length was measured. */

import { leastRoomKey } from '../facts/toe-room.ts'
import type { ToeRoomForecast } from '../findings/assessment.ts'
import { type Finding, idPart } from '../findings/finding.ts'
import { type Formula, minus, over, quantity } from '../findings/formula.ts'
import { addDays } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { daysPerYear, decimalAgeYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { footRates, type Rate } from './forecast.ts'
import { growthFinding } from './says.ts'
import { longerFootMm } from './velocity.ts'

/** The least toe room of a growing foot: the row that the season and the charts use. */
export const leastKey = (pair: Pair): ThresholdKey => leastRoomKey(pair, false)

/** A pair whose inside length was measured, by its place in the list of pairs. */
interface MeasuredPair {
	pair: Pair
	index: number
	insideLengthMm: number
	/** The length to fit today, mm. */
	fitMm: number
}
export interface PairForecast extends MeasuredPair {
	forecast: ToeRoomForecast
}
const measuredPairs = (visit: Visit, fitMm: number): MeasuredPair[] =>
	(visit.footwear ?? []).flatMap((pair, index) => {
		const { insideLengthMm } = pair
		return insideLengthMm === undefined ? [] : [{ pair, index, insideLengthMm, fitMm }]
	})
/** Toe room: inside length less the length to fit and what the sock adds, all mm. */
export const toeRoomOf = (insideLengthMm: number, fitMm: number, sockMm: number): Formula =>
	minus(quantity(insideLengthMm, 1), quantity(fitMm, 1), quantity(sockMm, 1))
/** Years until a room, mm, is used up at a rate of growth, mm a year. */
export const yearsLeft = (roomMm: number, mmPerYear: number): Formula =>
	over(quantity(roomMm, 1), quantity(mmPerYear))
/** The date on which a room is used up at a rate; undefined where the foot stops growing before. */
function usedUpOn(visit: Visit, roomMm: number, { mmPerYear, stopsAt }: Rate): string | undefined {
	const ageYears = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const years = yearsLeft(roomMm, mmPerYear).value
	return ageYears >= stopsAt || ageYears + years > stopsAt
		? undefined
		: addDays(visit.visitDate, Math.floor(years * daysPerYear))
}
function forecastOf(
	visit: Visit,
	{ pair, insideLengthMm, fitMm }: MeasuredPair,
	late: boolean,
	protocol: Protocol,
): ToeRoomForecast {
	const toeRoomMm = rounded(toeRoomOf(insideLengthMm, fitMm, visit.feet?.sockMm ?? 0).value, 4)
	const leastMm = protocol.value(leastKey(pair))
	const base = { id: pair.id, toeRoomMm, leastMm }
	if (toeRoomMm < leastMm) return { ...base, state: 'already-short' }
	const { mean, slow, fast } = footRates(visit, protocol, late)
	const earliest = usedUpOn(visit, toeRoomMm - leastMm, fast)
	return present({
		...base,
		state: earliest ? ('runs-out' as const) : ('lasts' as const),
		runsOutOn: usedUpOn(visit, toeRoomMm - leastMm, mean),
		earliest,
		latest: usedUpOn(visit, toeRoomMm - leastMm, slow),
	})
}
/**
 * Each pair with a measured inside length: toe room now (inside - length to fit - sock, mm) and the
 * date when it falls to the limit, with the dates of the fast and the slow edge of the band; a date
 * past the end of growth is absent.
 * @param late the player has not passed the growth spurt; @param fitMm length to fit of the sizing
 * room; without it the longer foot
 */
export function toeRoomForecasts(
	visit: Visit,
	late: boolean,
	fitMm: number | undefined,
	protocol: Protocol,
): PairForecast[] {
	const lengthMm = fitMm ?? longerFootMm(visit)
	if (lengthMm === undefined) return []
	return measuredPairs(visit, lengthMm).map((measured) => ({
		...measured,
		forecast: forecastOf(visit, measured, late, protocol),
	}))
}
/**
 * A finding for each pair that the foot may outgrow. @param again the date by which the feet are
 * measured again
 */
export function toeRoomFindings(
	forecasts: readonly PairForecast[],
	again: string,
	protocol: Protocol,
): Finding[] {
	return forecasts.flatMap(({ pair, index, forecast }) => {
		const { id, leastMm, runsOutOn, earliest, latest } = forecast
		if (!earliest) return []
		const measureBefore = earliest <= again
		const toeRoomMm = rounded(forecast.toeRoomMm, 1)
		const when = present({ runsOutOn, earliest, latest, measureBefore })
		return [
			growthFinding(
				state('growth.toe-room', { pair: pair.name ?? id, toeRoomMm, leastMm, ...when }),
				measureBefore ? 'advise' : 'note',
				[
					{ measure: 'toeRoomMm', value: toeRoomMm, unit: 'mm' },
					{ measure: 'leastToeRoomMm', value: leastMm, unit: 'mm' },
				],
				protocol.basis('toe room of a growing foot', leastKey(pair)),
				`growth.toe-room-${idPart(id, index)}`,
			),
		]
	})
}
