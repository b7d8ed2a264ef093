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
}
export interface PairForecast extends MeasuredPair {
	forecast: ToeRoomForecast
}
const measuredPairs = (visit: Visit): MeasuredPair[] =>
	(visit.footwear ?? []).flatMap((pair, index) => {
		const { insideLengthMm } = pair
		return insideLengthMm === undefined ? [] : [{ pair, index, insideLengthMm }]
	})
/** Toe room: inside length less the foot and what the sock adds, all mm. */
export const toeRoomOf = (insideLengthMm: number, footMm: number, sockMm: number): Formula =>
	minus(quantity(insideLengthMm, 1), quantity(footMm, 1), quantity(sockMm, 1))
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
	{ pair, insideLengthMm }: MeasuredPair,
	footMm: number,
	protocol: Protocol,
): ToeRoomForecast {
	const toeRoomMm = rounded(toeRoomOf(insideLengthMm, footMm, visit.feet?.sockMm ?? 0).value, 4)
	const leastMm = protocol.value(leastKey(pair))
	const base = { id: pair.id, toeRoomMm, leastMm }
	if (toeRoomMm < leastMm) return { ...base, state: 'already-short' }
	const { mean, slow, fast } = footRates(visit, protocol)
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
 * Each pair with a measured inside length: toe room now (inside - longer foot - sock, mm) and the
 * date when it
 * falls to the limit, with the dates of the fast and the slow edge of the band; a date past the end
 * of growth is absent.
 */
export function toeRoomForecasts(visit: Visit, protocol: Protocol): PairForecast[] {
	const footMm = longerFootMm(visit)
	if (footMm === undefined) return []
	return measuredPairs(visit).map((measured) => ({
		...measured,
		forecast: forecastOf(visit, measured, footMm, protocol),
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
