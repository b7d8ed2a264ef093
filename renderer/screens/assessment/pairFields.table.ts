/** What is asked of a pair, in the order in which it is asked. */
import type { Pair } from '../../../shared/engine/visit/visit.ts'

export type PairField = keyof Pair
/** The six places that always stand open: what verdict, size and heel raise are worked out from. */
export const pairPlaces: readonly (readonly PairField[])[] = [['name'], ['sole'], ['sizeSystem', 'size'], ['insideLengthMm', 'heelToForefootOffsetMm'], ['roles'], ['comfort', 'hurts']]
interface PairFold {
	title: string
	fields: readonly PairField[]
}
export const pairFolds: readonly PairFold[] = [
	{
		title: 'More of this pair',
		fields: ['heelLiftMm', 'insertInside', 'brokenIn', 'minutesWorn', 'acquired', 'studHeightMm', 'damage', 'note'],
	},
	{
		title: 'For the season plan',
		fields: ['letter', 'newFrom', 'price', 'lifeMinutes', 'dryingHours', 'weeklyMinutesMax', 'shareMinPercent', 'shareMaxPercent'],
	},
]
export const pairHints: Partial<Record<PairField, string>> = {
	roles: 'Where none is chosen, by its sole',
	comfort: '0 worst, 10 best',
}
