/** In which pairs an insert is worn, and what it puts under the heel there. All heights mm. */
import type { InsertResult, InsertSide, OwnedPair, RolePair } from '../findings/assessment.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type InsertsInside, isTrainerPair, type Raises } from './raised.ts'
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
/**
 * What the inserts put under each heel in the pairs of the raise, the raise left out: the raise of a
 * pair shares the room with it. Empty where no insert is proposed.
 */
export function insertsInside(
	inserts: Pick<InsertResult, 'left' | 'right'>,
	{ pairs }: Pick<Raises, 'pairs'>,
	visit: Owner,
): InsertsInside {
	const isWorn = (pair: string) =>
		bothSides.some(
			(side) => inserts[side].state === 'proposed' && goesInto(inserts[side], pair, visit),
		)
	const heights = pairs
		.filter(({ pair }) => isWorn(pair))
		.map(({ pair }) => {
			const shoe = isTrainerPair(pair, visit) ? 'trainer' : 'boot'
			return [
				pair,
				perSide((side) => thicknessMm(inserts[side].elements, underHeel, shoe)),
			] as const
		})
	return new Map(heights)
}
