/** When growth of the foot takes the room in an owned pair. */
import type { CurrentPair, ToeRoomForecast } from '../../findings/assessment.ts'
import { present } from '../../plain/present.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import type { Ground, PairPicture } from './ground.ts'

export const forecastOf = (pair: Pair, { forecasts }: PairPicture): ToeRoomForecast | undefined =>
	forecasts.find(({ id }) => id === pair.id)
export function growthGrounds(pair: Pair, picture: PairPicture): Ground[] {
	const { leastMm, runsOutOn: on, earliest } = forecastOf(pair, picture) ?? {}
	if (leastMm === undefined || on === undefined) return []
	const early = earliest !== undefined && earliest < on ? { earliest } : {}
	const held = picture.purchaseHeld ? { held: true } : {}
	const statement = state('pairs.outgrown-by', { leastMm, on, ...early, ...held })
	return [{ verdict: 'keep', statement, ofUse: true }]
}
/** The span of days that the band of the forecast gives. */
export function replaceBetween(
	forecast: ToeRoomForecast | undefined,
): CurrentPair['replaceBetween'] {
	const { earliest, latest } = forecast ?? {}
	return earliest === undefined ? undefined : present({ from: earliest, to: latest })
}
