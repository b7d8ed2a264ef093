/** In which pairs an insert is worn, and what stands under the heel there. All heights mm. */
import type {
	InsertResult,
	InsertSide,
	OwnedPair,
	PrescribedInsert,
	RaisePlan,
	RolePair,
} from '../findings/assessment.ts'
import type { PerSide } from '../findings/compared.ts'
import { perSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { isTrainerPair } from './raised.ts'
import { thicknessMm } from './room-in-boot.ts'
import { carriers, underHeel } from './settle.table.ts'

/** What an insert lies in: the pairs of the roles, and what is to become of the owned ones. */
export interface PairsWorn {
	roles: readonly Pick<RolePair, 'role' | 'ownedPair'>[]
	owned: readonly Pick<OwnedPair, 'id' | 'verdict'>[]
}
/**
 * The pairs an insert goes into: the owned pair of a role, or `role.<role>` for one to be chosen,
 * each once; never one that is to be left off or replaced.
 */
export function insertPairs(
	{ state, elements }: Pick<InsertSide, 'state' | 'elements'>,
	{ roles, owned }: PairsWorn,
	visit: Pick<Visit, 'footwear'>,
): string[] {
	if (state !== 'proposed') return []
	const treating = elements.filter(({ element }) => !(carriers as string[]).includes(element))
	const goesInto = (pair: string): boolean => {
		const shoe = isTrainerPair(pair, visit) ? 'trainer' : 'boot'
		return treating.some(({ where }) => where === 'both' || where === shoe)
	}
	const isWorn = (pair: string): boolean =>
		!owned.some(
			({ id, verdict }) => id === pair && (verdict === 'stop-wearing' || verdict === 'replace'),
		)
	const pairs = roles.map(({ role, ownedPair }) =>
		ownedPair !== undefined && isWorn(ownedPair) ? ownedPair : `role.${role}`,
	)
	return [...new Set(pairs)].filter(goesInto)
}
/** The insert as the prescription keeps it, each foot. */
export const prescribedInsert = (
	inserts: Pick<InsertResult, 'left' | 'right'>,
	worn: PairsWorn,
	visit: Pick<Visit, 'footwear'>,
): PerSide<PrescribedInsert> =>
	perSide((side) => {
		const { state, elements } = inserts[side]
		return {
			state: state === 'stopped' ? 'held' : state,
			elements: elements.map(({ element }) => element),
			pairs: insertPairs(inserts[side], worn, visit),
		}
	})
const withoutRaise = underHeel.filter((element) => !element.endsWith('raise'))
/** What an insert puts under the heel in a pair besides the raise: shell, cover and cushion. */
const insertMm = ({ elements }: InsertSide, pair: string, visit: Pick<Visit, 'footwear'>): number =>
	thicknessMm(elements, withoutRaise, isTrainerPair(pair, visit) ? 'trainer' : 'boot')
/**
 * The raises with everything that stands under the heel in each pair: wedge, insert and cover share
 * this figure.
 * @param pairs of each foot, the pairs its insert goes into
 */
export const withUnderHeel = <Plan extends Pick<RaisePlan, 'pairs'>>(
	raise: Plan,
	inserts: Pick<InsertResult, 'left' | 'right'>,
	pairs: PerSide<readonly string[]>,
	visit: Pick<Visit, 'footwear'>,
): Plan => ({
	...raise,
	pairs: raise.pairs.map((raised) => ({
		...raised,
		...perSide((side) => {
			const foot = raised[side]
			const insideMm = foot.madeBy === 'outsole' ? 0 : foot.addMm
			const shellMm = pairs[side].includes(raised.pair)
				? insertMm(inserts[side], raised.pair, visit)
				: 0
			return { ...foot, addedUnderHeelMm: rounded(insideMm + shellMm, 1) }
		}),
	})),
})
