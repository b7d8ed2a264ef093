/** When a growing foot uses up the toe room of the pairs whose inside length was measured. */

import { isTrainer } from '../facts/trainer.ts'
import type { ToeRoomForecast } from '../findings/assessment.ts'
import { type Finding, idPart } from '../findings/finding.ts'
import { addDays, dayInWords } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { footRates, type Rate } from './forecast.ts'
import { finding } from './says.ts'
import { longerFootMm } from './velocity.ts'

/** The least toe room before a pair is replaced: the rows that the verdict on the pair uses. */
export const leastKey = (pair: Pair): ThresholdKey =>
	isTrainer(pair) ? 'footwear.youthTrainerReplaceMm' : 'footwear.youthReplaceMm'

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
/** The date on which a room is used up at a rate; undefined where the foot stops growing before. */
function usedUpOn(visit: Visit, roomMm: number, { mmPerYear, stopsAt }: Rate): string | undefined {
	const ageYears = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const years = roomMm / mmPerYear
	return ageYears >= stopsAt || ageYears + years > stopsAt
		? undefined
		: addDays(visit.visitDate, Math.floor(years * 365.25))
}
function forecastOf(
	visit: Visit,
	{ pair, insideLengthMm }: MeasuredPair,
	footMm: number,
	protocol: Protocol,
): ToeRoomForecast {
	const toeRoomMm = rounded(insideLengthMm - footMm - (visit.feet?.sockMm ?? 0), 4)
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
/** When the room runs out, in words. */
function whenWords({ runsOutOn, latest }: ToeRoomForecast, earliest: string): string {
	const atEarliest = `${dayInWords(earliest)} at the earliest`
	if (!runsOutOn) return `${atEarliest}, or not at all`
	const atLatest = latest ? ` and ${dayInWords(latest)} at the latest` : ''
	return `about ${dayInWords(runsOutOn)}, ${atEarliest}${atLatest}`
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
		const { id, toeRoomMm, leastMm, earliest } = forecast
		if (!earliest) return []
		const before = earliest <= again
		return [
			finding(
				`growth.toe-room-${idPart(id, index)}`,
				before ? 'advise' : 'note',
				`Toe room in ${pair.name ?? id} (${rounded(toeRoomMm, 1)} mm) falls to ${leastMm} mm ` +
					`${whenWords(forecast, earliest)}, by the mean growth of one group of ` +
					`children.${before ? ' Measure again before then.' : ''}`,
				[
					{ measure: 'Toe room now', value: rounded(toeRoomMm, 1), unit: 'mm' },
					{ measure: 'Least toe room', value: leastMm, unit: 'mm' },
				],
				protocol.basis('toe room of a growing foot', leastKey(pair)),
			),
		]
	})
}
