/** In which pairs an insert is worn, and what it puts under the heel there. All heights mm. */
import type { InsertResult, InsertSide, OwnedPair, RolePair } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { isTrainerPair, type RaiseFigures } from './raised.ts'
import { thicknessMm } from './room-in-boot.ts'
import { carriers, underHeel } from './settle.table.ts'

type Owner = Pick<Visit, 'footwear'>
/** What an insert lies in: the pairs of the roles, and what is to become of the owned ones. */
export interface PairsWorn {
	roles: readonly Pick<RolePair, 'role' | 'ownedPair'>[]
	owned: readonly Pick<OwnedPair, 'id' | 'verdict'>[]
}
/** Whether anything of it that treats is for the kind of shoe that this pair is. */
function goesInto({ elements }: Pick<InsertSide, 'elements'>, pair: string, visit: Owner): boolean {
	const shoe = isTrainerPair(pair, visit) ? 'trainer' : 'boot'
	return elements.some(
		({ element, where }) =>
			!(carriers as readonly string[]).includes(element) && (where === 'both' || where === shoe),
	)
}
/**
 * The pairs an insert goes into: the owned pair of a role, or `role.<role>` for one to be chosen,
 * each once; never one that is not to be worn.
 */
export function insertPairs(
	insert: Pick<InsertSide, 'state' | 'elements'>,
	{ roles, owned }: PairsWorn,
	visit: Owner,
): string[] {
	if (insert.state !== 'proposed') return []
	const isLeftOff = (pair: string): boolean =>
		owned.some(({ id, verdict }) => id === pair && verdict === 'stop-wearing')
	const pairs = roles.map(({ role, ownedPair }) =>
		ownedPair === undefined || isLeftOff(ownedPair) ? `role.${role}` : ownedPair,
	)
	return [...new Set(pairs)].filter((pair) => goesInto(insert, pair, visit))
}
/** What an insert puts under each heel, mm, by pair; a foot without one is left out. */
export type InsertsInside = ReadonlyMap<string, { left?: number; right?: number }>
/**
 * What the inserts put under each heel in the pairs of the raise, the raise left out: the raise of a
 * pair shares the room with it. Empty where no insert is proposed.
 */
export const insertsInside = (
	inserts: Pick<InsertResult, 'left' | 'right'>,
	{ pairs }: Pick<RaiseFigures, 'pairs'>,
	visit: Owner,
): InsertsInside =>
	new Map(
		pairs.flatMap(({ pair }) => {
			const shoe = isTrainerPair(pair, visit) ? 'trainer' : 'boot'
			const heightOf = (side: Side): number | undefined =>
				inserts[side].state === 'proposed' && goesInto(inserts[side], pair, visit)
					? thicknessMm(inserts[side].elements, underHeel, shoe)
					: undefined
			const heights = present({ left: heightOf('left'), right: heightOf('right') })
			return Object.keys(heights).length > 0 ? [[pair, heights] as const] : []
		}),
	)
