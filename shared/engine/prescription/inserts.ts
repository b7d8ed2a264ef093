/** The insert of each foot as it stands in the plan: which elements, and in which pairs. */
import { isHeld } from '../facts/held.ts'
import type {
	Gate,
	InsertResult,
	InsertSide,
	OwnedPair,
	PerSide,
	PrescribedInsert,
	RolePair,
} from '../findings/assessment.ts'
import { perSide } from '../visit/sides.ts'

const places = {
	boot: ['match', 'training'],
	trainer: ['running', 'everyday', 'training'],
	both: ['match', 'training', 'running', 'everyday'],
} as const
/** What the insert goes into: a pair that serves its role, else one to be chosen. */
function pairsFor(
	elements: InsertSide['elements'],
	pairs: readonly RolePair[],
	owned: readonly OwnedPair[],
): string[] {
	const roles = new Set<string>(elements.flatMap(({ where }) => places[where]))
	const left = new Set(
		owned.filter(({ verdict }) => verdict === 'stop-wearing').map(({ id }) => id),
	)
	const names = pairs
		.filter(({ role }) => roles.has(role))
		.map(({ role, ownedPair }) =>
			ownedPair !== undefined && !left.has(ownedPair) ? ownedPair : `role.${role}`,
		)
	return [...new Set(names)]
}
export const insertsOf = (
	insert: InsertResult,
	gate: Gate,
	pairs: readonly RolePair[],
	owned: readonly OwnedPair[],
): PerSide<PrescribedInsert> =>
	perSide((side) => {
		const { state, elements } = insert[side]
		if (state === 'held' || state === 'stopped' || isHeld(gate, 'insert', side))
			return { state: 'held', elements: [], pairs: [] }
		if (state !== 'proposed') return { state: 'not-needed', elements: [], pairs: [] }
		return {
			state,
			elements: [...new Set(elements.map(({ element }) => element))],
			pairs: pairsFor(elements, pairs, owned),
		}
	})
