/**
 * What pair serves each role of the player. Where nothing may be bought, nothing is asked of a pair:
 * only the pairs at hand are named.
 */
import { isHeld } from '../../facts/held.ts'
import { isTrainer } from '../../facts/trainer.ts'
import type {
	AnkleResult,
	FeatureWish,
	FootwearResult,
	Gate,
	GrowthResult,
	InsertResult,
	OwnedPair,
	PairReason,
	PlayerFacts,
	PostureResult,
	RaiseResult,
	RolePair,
	ScreeningResult,
	Settled,
	SizingResult,
} from '../../findings/assessment.ts'
import { insertVolume } from '../../footwear/insert-volume.ts'
import { roleRows } from '../../footwear/roles.table.ts'
import { settle } from '../../footwear/settle.ts'
import { shelfFor } from '../../footwear/shelf-for.ts'
import { present } from '../../plain/present.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import type { Shelf } from '../../visit/shelf.ts'
import { type Feature, type PairRole, type Surface, surfaces } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import { contentOf } from '../../words/statement.ts'
import { sizeToBuyBy } from '../settled-size.ts'
import { withinMeans } from './means.ts'
import {
	type AtHand,
	besidePairs,
	isOfRole,
	mayBeWorn,
	pairsAtHand,
	type Served,
	servingPair,
	suitedPairs,
} from './owned.ts'
import { compromises, soleLeft, unmetBySole } from './settled-by-sole.ts'
import { type SoleOnGrounds, solesFor } from './soles.ts'
import { widthWords } from './width.ts'
import { wishesBeforeGrip, wishesOfRole, wishesOfSole, withOwnSole } from './wishes.ts'

/** What the pairs are worked out from; `owned` as `prescription/owned.ts` judges them. */
export interface RolesContext {
	facts: PlayerFacts
	gate: Gate
	sizing: SizingResult
	ankle: AnkleResult
	posture: PostureResult
	growth: GrowthResult | undefined
	screening: ScreeningResult
	raise: RaiseResult
	footwear: FootwearResult
	insert: InsertResult
	owned: readonly OwnedPair[]
	shelf: Shelf | undefined
}
/** A pair as it is worked out, with the wishes in full. */
interface Wanted {
	pair: RolePair
	seek: FeatureWish[]
	avoid: FeatureWish[]
}

/** The pairs, in the order of the roles; ids `match`, `match.2`: the same for the same visit. */
export function rolePairs(visit: Visit, context: RolesContext, protocol: Protocol): RolePair[] {
	const atHand = pairsAtHand(visit, context.owned, context.footwear)
	const { facts, gate } = context
	if (isHeld(gate, 'purchase')) return facts.roles.flatMap((role) => heldPair(role, facts, atHand))
	const wanted = facts.roles.flatMap((role) => pairsOf(role, context, atHand, protocol))
	const within = withinMeans(
		wanted.map(({ pair }) => pair),
		facts.means,
		atHand,
	)
	return within.map((pair, at) => {
		const { seek = [], avoid = [] } = wanted[at] ?? {}
		return { ...pair, shelf: modelsFor(pair, seek, avoid, visit, context, protocol) }
	})
}
const groundsOf = (role: PairRole, facts: PlayerFacts): Surface[] =>
	surfaces.filter(
		(surface) => facts.grounds.includes(surface) && roleRows[role].surfaces.includes(surface),
	)
/** The pair at hand of a role while nothing may be bought; none where there is none. */
function heldPair(role: PairRole, facts: PlayerFacts, atHand: readonly AtHand[]): RolePair[] {
	const serving = atHand.find((one) => isOfRole(one, role) && mayBeWorn(one, role))
	if (serving === undefined) return []
	return [
		{
			id: role,
			role,
			surfaces: groundsOf(role, facts),
			seek: [],
			avoid: [],
			settled: [],
			ownedPair: serving.pair.id,
			shelf: [],
			means: 'keep',
		},
	]
}
const mostCostFor = (role: PairRole, { value }: Protocol): number =>
	value(role === 'match' ? 'footwear.oneSoleCostMost' : 'footwear.trainingSoleCostMost')
/** The pairs of a role: one, or as many as its grounds need. */
function pairsOf(
	role: PairRole,
	context: RolesContext,
	atHand: readonly AtHand[],
	protocol: Protocol,
): Wanted[] {
	const { facts, footwear } = context
	const row = roleRows[role]
	const grounds = groundsOf(role, facts)
	const { seek, avoid } = settle(
		wishesOfRole(footwear.target.seek, role, grounds),
		wishesOfRole(footwear.target.avoid, role, grounds),
	)
	const worn = atHand.filter((one) => isOfRole(one, role) && mayBeWorn(one, role))
	const soles = solesFor({
		surfaces: grounds,
		soles: row.soles,
		atHand: worn.flatMap(({ pair }) => pair.sole ?? []),
		before: { seek: wishesBeforeGrip(seek), avoid: wishesBeforeGrip(avoid) },
		onlyOne: facts.means === 'one-pair',
		mostCost: mostCostFor(role, protocol),
	})
	const each: Partial<SoleOnGrounds>[] =
		soles.length > 0 ? soles : [row.usual === undefined ? {} : { sole: row.usual }]
	return each.map((on, at) =>
		wantedPair(at === 0 ? role : `${role}.${at + 1}`, role, on, context, atHand, protocol),
	)
}
/** What is asked of the pair of a role with a sole, and what serves it. */
function wantedPair(
	id: string,
	role: PairRole,
	on: Partial<SoleOnGrounds>,
	context: RolesContext,
	atHand: readonly AtHand[],
	protocol: Protocol,
): Wanted {
	const { sole, surfaces: grounds = [] } = on
	const { target } = context.footwear
	const ofRole = (wishes: readonly FeatureWish[]) => wishesOfRole(wishes, role, grounds)
	const stands = settle(
		wishesOfSole(withOwnSole(ofRole(target.seek), sole), sole),
		wishesOfSole(ofRole(target.avoid), sole),
	)
	const unmet = sole === undefined ? [] : unmetBySole(sole, grounds, stands)
	const isUnmet = ({ feature }: FeatureWish) => unmet.some((one) => one.feature === feature)
	const seek = stands.seek.filter((wish) => !isUnmet(wish))
	const avoid = stands.avoid.filter((wish) => !isUnmet(wish))
	const served: Served = {
		role,
		surfaces: grounds,
		seek,
		avoid,
		mostCost: mostCostFor(role, protocol),
		longMm: protocol.value('footwear.softGroundStudMm'),
	}
	const serving = servingPair(atHand, served)
	const beside = serving === undefined ? besidePairs(atHand, served) : []
	const settled: Settled[] = [
		...stands.settled,
		...unmet,
		...(sole === undefined ? [] : compromises(on, roleRows[role].soles, protocol)),
		...soleLeft(on),
	]
	const pair: RolePair = present({
		id,
		role,
		surfaces: [...grounds],
		sole,
		...sizeFor(role, sole, context),
		seek: featuresOf(seek),
		avoid: featuresOf(avoid),
		reasons: reasonsFor(context.footwear, role),
		settled,
		ownedPair: serving?.pair.id,
		couldServe: suitedPairs(atHand, served),
		beside: beside.length > 0 ? beside : undefined,
		shelf: [],
		means: meansOf(serving, seek.length + avoid.length > 0 || sole !== undefined, context),
	})
	return { pair, seek, avoid }
}
/** What each finding asks of a pair of this role, whether it stands or gave way. */
function reasonsFor({ target, findings }: FootwearResult, role: PairRole): PairReason[] {
	return findings.flatMap((finding) => {
		const content = contentOf(finding)
		const of = (wishes: readonly FeatureWish[]) =>
			featuresOf(
				wishes.filter(
					(wish) => (wish.roles?.includes(role) ?? true) && contentOf(wish) === content,
				),
			)
		const [seek, avoid] = [of(target.seek), of(target.avoid)]
		return seek.length + avoid.length > 0 ? [{ finding: finding.id, seek, avoid }] : []
	})
}
const featuresOf = (wishes: readonly FeatureWish[]): Feature[] => [
	...new Set(wishes.map(({ feature }) => feature)),
]
/** Inside length of boots or of trainers, width, and the offset where the range of the ankle asks one. */
function sizeFor(role: PairRole, sole: RolePair['sole'], { sizing, ankle, gate }: RolesContext) {
	const trainer = roleRows[role].band === 'trainer' || isTrainer({ sole })
	const size = sizeToBuyBy(sizing)
	return {
		insideLengthMm: trainer ? size.trainers : size.boots,
		width: widthWords(sizing),
		offsetMm: isHeld(gate, 'raise') ? undefined : ankle.offsetMm,
	}
}
/** Nothing needs to change, changes will do, or a purchase is worth it. */
function meansOf(
	serving: AtHand | undefined,
	isAsked: boolean,
	{ footwear, raise }: RolesContext,
): RolePair['means'] {
	if (serving === undefined) return isAsked ? 'buy' : 'keep'
	const { modifications = [], lacing = [] } = footwear
	const raised = raise.pairs
		.filter(({ pair }) => pair === serving.pair.id)
		.some(({ left, right }) => left.addMm > 0 || right.addMm > 0)
	const isChanged =
		serving.verdict === 'modify' ||
		serving.work.length + modifications.length + lacing.length > 0 ||
		raised
	return isChanged ? 'with-what-you-have' : 'keep'
}
/** Models to try on where a purchase is worth it; none where the shelf is held. */
function modelsFor(
	{ role, surfaces: grounds, means }: RolePair,
	seek: readonly FeatureWish[],
	avoid: readonly FeatureWish[],
	visit: Visit,
	{ shelf, insert, gate, ...context }: RolesContext,
	protocol: Protocol,
): string[] {
	const isSized = context.sizing.usableForBuying !== false
	if (shelf === undefined || means !== 'buy' || !isSized || isHeld(gate, 'shelf')) return []
	return shelfFor(
		{ seek, avoid, role, surfaces: grounds },
		{ shelf, ranked: context.footwear.ranked },
		visit,
		{ ...context, gate },
		protocol,
		insertVolume(insert),
	)
}
