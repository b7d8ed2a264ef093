/** Toe room of a pair against the growth that is forecast for the foot. */

import { isAdult } from '../../facts/age.ts'
import { leastRoomKey } from '../../facts/toe-room.ts'
import type { GrowthResult } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Pair, Visit } from '../../visit/visit.ts'
import type { PlanPair } from '../plan-file.ts'

/**
 * Toe room of a pair in mm against the forecast of the longer foot; undefined where either is
 * unknown.
 */
export function toeRoomOf(
	pair: Pair,
	visit: Visit,
	growth: GrowthResult | undefined,
	protocol: Protocol,
): Pick<PlanPair, 'toeRoom' | 'outgrownBy' | 'measureAgainBy'> {
	const inside = pair.insideLengthMm
	if (inside === undefined || !growth?.footForecast) return {}
	const least = protocol.value(leastRoomKey(pair, isAdult(visit, protocol)))
	const room = (lengthMm: number): number =>
		rounded(inside - lengthMm - (visit.feet?.sockMm ?? 0), 1)
	const toeRoom = growth.footForecast.map(({ date, lengthMm, lowMm, highMm }) => ({
		date,
		toeRoomMm: room(lengthMm),
		lowMm: room(highMm),
		highMm: room(lowMm),
	}))
	const [measureAgainBy] = [toeRoom.find(({ lowMm }) => lowMm < least)?.date, growth.measureAgainBy]
		.filter((date) => date !== undefined)
		.sort()
	return present({
		toeRoom,
		outgrownBy: toeRoom.find(({ toeRoomMm }) => toeRoomMm < least)?.date,
		measureAgainBy,
	})
}
