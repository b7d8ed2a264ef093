/** Which pair at hand serves a role on its grounds. */
import { servesRole } from '../../facts/trainer.ts'
import type {
	FeatureWish,
	FootwearResult,
	OwnedPair,
	OwnedVerdict,
} from '../../findings/assessment.ts'
import type { PairRole, Surface } from '../../visit/terms.ts'
import type { Pair, Visit } from '../../visit/visit.ts'
import { type Statement, state } from '../../words/statement.ts'
import { costOn, wishAgainst } from './soles.ts'

/** A pair that the player owns, with what is to be done about it. */
export interface AtHand {
	pair: Pair
	verdict: OwnedVerdict
	/** Ids of changes to it. */
	work: readonly string[]
}
/** What the room's own judgement comes to where the plan has none of the pair. */
const asVerdict = {
	keep: 'keep',
	unknown: 'keep',
	change: 'modify',
	replace: 'replace',
} as const satisfies Record<FootwearResult['current'][number]['verdict'], OwnedVerdict>

/** The pairs at hand with their verdicts. */
export const pairsAtHand = (
	{ footwear: pairs = [] }: Visit,
	owned: readonly OwnedPair[],
	{ current }: FootwearResult,
): AtHand[] =>
	pairs.map((pair) => {
		const judged = owned.find(({ id }) => id === pair.id)
		const inRoom = current.find(({ id }) => id === pair.id)?.verdict ?? 'unknown'
		return { pair, verdict: judged?.verdict ?? asVerdict[inRoom], work: judged?.work ?? [] }
	})
/** Whether it is worn for the role at all, however it fits. */
export const isOfRole = ({ pair }: AtHand, role: PairRole): boolean => servesRole(pair, role)
/** Whether it may go on being worn for the role: nothing that hurts does. */
export const mayBeWorn = ({ pair, verdict }: AtHand, role: PairRole): boolean =>
	pair.hurts !== true &&
	(verdict === 'keep' || verdict === 'modify' || (verdict === 'training-only' && role !== 'match'))

export interface Served {
	role: PairRole
	surfaces: readonly Surface[]
	seek: readonly FeatureWish[]
	avoid: readonly FeatureWish[]
	/** The most that a sole may cost on a ground of the role. */
	mostCost: number
	/** From this length of the longest stud, mm, studs are long. */
	longMm: number
}
const isStrict = ({ strict }: FeatureWish): boolean => strict === true
function isSuited({ sole, studHeightMm }: Pair, served: Served): boolean {
	const seek = served.seek.filter(isStrict)
	const avoid = served.avoid.filter(isStrict)
	const tooLong =
		studHeightMm !== undefined &&
		studHeightMm >= served.longMm &&
		avoid.some(({ feature }) => feature === 'long-studs')
	if (tooLong) return false
	if (sole === undefined) return true
	return (
		wishAgainst(sole, { seek, avoid }) === undefined &&
		served.surfaces.every((surface) => (costOn(sole, surface) ?? Infinity) <= served.mostCost)
	)
}
/**
 * Why a pair that stays in use does not serve the role for which another is looked for: a reader
 * who keeps it asks.
 */
export const besidePairs = (atHand: readonly AtHand[], served: Served): Statement[] =>
	atHand
		.filter((one) => isOfRole(one, served.role) && stays.has(one.verdict))
		.map(({ pair, verdict }) =>
			state('roles.beside', {
				pair: pair.name ?? pair.id,
				why: pair.hurts ? 'hurts' : verdict === 'training-only' ? verdict : 'sole',
				role: served.role,
				surfaces: served.surfaces,
			}),
		)
const stays: ReadonlySet<OwnedVerdict> = new Set(['keep', 'modify', 'training-only'])
/** Ids of pairs that would serve a role on its grounds, were they to be worn. */
export const suitedPairs = (atHand: readonly AtHand[], served: Served): string[] =>
	atHand
		.filter(
			(one) => isOfRole(one, served.role) && one.pair.hurts !== true && isSuited(one.pair, served),
		)
		.map(({ pair }) => pair.id)
/** The pair that serves a role on its grounds; one to be kept as it is before one to be changed. */
export function servingPair(atHand: readonly AtHand[], served: Served): AtHand | undefined {
	const serving = atHand.filter(
		(one) =>
			isOfRole(one, served.role) && mayBeWorn(one, served.role) && isSuited(one.pair, served),
	)
	return serving.find(({ verdict }) => verdict !== 'modify') ?? serving[0]
}
