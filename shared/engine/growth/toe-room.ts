/** When a growing foot uses up the toe room of the pairs whose inside length was measured. */

import type { ToeRoomForecast } from '../findings/assessment.ts'
import { type Finding, idPart } from '../findings/finding.ts'
import { addDays, dayInWords } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { decimalAgeYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair, Visit } from '../visit/visit.ts'
import { footRates } from './forecast.ts'
import { finding } from './says.ts'
import { longerFootMm } from './velocity.ts'

/** The least toe room before a pair is replaced: the rows that the verdict on the pair uses. */
export const leastKey = (pair: Pair): ThresholdKey =>
	pair.sole === 'road' || pair.sole === 'trail'
		? 'footwear.youthTrainerReplaceMm'
		: 'footwear.youthReplaceMm'

/**
 * Each pair with a measured inside length: toe room now (inside - longer foot - sock, mm) and the
 * date when it
 * falls to the limit, with the dates of the fast and the slow edge of the band; a date past the end
 * of growth is absent.
 */
export function toeRoomForecasts(visit: Visit, protocol: Protocol): ToeRoomForecast[] {
	const length = longerFootMm(visit)
	if (length === undefined) return []
	const age = decimalAgeYears(visit.player.birthDate, visit.visitDate)
	const { mean, slow, fast } = footRates(visit, protocol)
	return (visit.footwear ?? []).flatMap((pair): ToeRoomForecast[] => {
		if (pair.insideLengthMm === undefined) return []
		const toeRoomMm = rounded(pair.insideLengthMm - length - (visit.feet?.sockMm ?? 0), 4),
			leastMm = protocol.value(leastKey(pair))
		const base = { id: pair.id, toeRoomMm, leastMm }
		if (toeRoomMm < leastMm) return [{ ...base, state: 'already-short' }]
		const when = ({
			mmPerYear,
			stopsAt,
		}: {
			mmPerYear: number
			stopsAt: number
		}): string | undefined => {
			const years = (toeRoomMm - leastMm) / mmPerYear
			return age >= stopsAt || age + years > stopsAt
				? undefined
				: addDays(visit.visitDate, Math.floor(years * 365.25))
		}
		const runsOutOn = when(mean),
			earliest = when(fast),
			latest = when(slow)
		return [
			{
				...base,
				state: earliest ? 'runs-out' : 'lasts',
				...(runsOutOn ? { runsOutOn } : {}),
				...(earliest ? { earliest } : {}),
				...(latest ? { latest } : {}),
			},
		]
	})
}
/**
 * A finding for each pair that the foot may outgrow. @param again the date by which the feet are
 * measured again
 */
export function toeRoomFindings(
	visit: Visit,
	forecasts: readonly ToeRoomForecast[],
	again: string,
	protocol: Protocol,
): Finding[] {
	const pairs = visit.footwear ?? []
	return forecasts.flatMap(({ id, toeRoomMm, leastMm, runsOutOn, earliest, latest }) => {
		const index = pairs.findIndex((pair) => pair.id === id),
			pair = pairs[index]!
		if (!earliest) return []
		const span = runsOutOn
			? `about ${dayInWords(runsOutOn)}, ${dayInWords(earliest)} at the ` +
				`earliest${latest ? ` and ${dayInWords(latest)} at the latest` : ''}`
			: `${dayInWords(earliest)} at the earliest, or not at all`
		return [
			finding(
				`growth.toe-room-${idPart(id, index)}`,
				earliest <= again ? 'advise' : 'note',
				`Toe room in ${pair.name ?? id} (${rounded(toeRoomMm, 1)} mm) falls to ${leastMm} mm ` +
					`${span}, by the mean growth of one group of ` +
					`children.${earliest <= again ? ' Measure again before then.' : ''}`,
				[
					{ measure: 'Toe room now', value: rounded(toeRoomMm, 1), unit: 'mm' },
					{ measure: 'Least toe room', value: leastMm, unit: 'mm' },
				],
				protocol.basis('toe room of a growing foot', leastKey(pair)),
			),
		]
	})
}
