/**
 * Wishes that pull apart, settled by the order of the protocol: in one pair no feature is sought and
 * avoided, and of two opposite features one at the most is sought. What gave way is told with why.
 */
import type { FeatureWish } from '../findings/footwear-result.ts'
import type { Settled } from '../findings/prescription-result.ts'
import { need } from '../plain/need.ts'
import { type SettlingRank, settlingOrder, strengthOrder } from '../protocol/settling.table.ts'
import type { Feature } from '../visit/terms.ts'
import { state } from '../words/statement.ts'
import { oppositesOf } from './opposites.ts'

export interface Standing {
	seek: FeatureWish[]
	avoid: FeatureWish[]
	settled: Settled[]
	/** Features that stand over others of the same place in the order. */
	contested: ReadonlySet<Feature>
}
/** What made the one stand over the other; order: they weigh alike, and the safer one stands. */
type SettledBy = 'rank' | 'severity' | 'strength' | 'order'
/** All wishes of one direction for one feature, with the one that weighs most. */
interface Claim {
	feature: Feature
	way: 'seek' | 'avoid'
	wishes: FeatureWish[]
	strongest: FeatureWish
}
/** A wish of a record of before 0.4 says no rank: it stands where a preference does. */
export const rankOf = ({ rank }: FeatureWish): SettlingRank => rank ?? 'preference'
const placeOf = (wish: FeatureWish): number => settlingOrder.indexOf(rankOf(wish))
const strengthPlace = ({ basis }: FeatureWish): number => strengthOrder.indexOf(basis.strength)
/** Below 0: the first weighs more. */
const compareWishes = (first: FeatureWish, second: FeatureWish): number =>
	placeOf(first) - placeOf(second) ||
	(second.severity ?? 0) - (first.severity ?? 0) ||
	strengthPlace(first) - strengthPlace(second)
const compareClaims = (first: Claim, second: Claim): number =>
	compareWishes(first.strongest, second.strongest) ||
	Number(first.way === 'seek') - Number(second.way === 'seek')

/** Whether a wish stands before a rank in the order. */
export const standsBefore = (wish: FeatureWish, rank: SettlingRank): boolean =>
	placeOf(wish) < settlingOrder.indexOf(rank)
/** These features, those whose strongest wish weighs most first; without a wish they come last. */
export function byWeight(wishes: readonly FeatureWish[], features: readonly Feature[]): Feature[] {
	const inOrder = wishes.toSorted(compareWishes).map(({ feature }) => feature)
	const placeOfFeature = (feature: Feature) => {
		const place = inOrder.indexOf(feature)
		return place < 0 ? inOrder.length : place
	}
	return features.toSorted((one, other) => placeOfFeature(one) - placeOfFeature(other))
}
function claimsOf(wishes: readonly FeatureWish[], way: Claim['way']): Claim[] {
	const features = [...new Set(wishes.map(({ feature }) => feature))]
	return features.map((feature) => {
		const same = wishes.filter((wish) => wish.feature === feature)
		const [strongest] = same.toSorted(compareWishes)
		return { feature, way, wishes: same, strongest: need(strongest, 'a wish for the feature') }
	})
}
const pullApart = (first: Claim, second: Claim): boolean =>
	first.way === second.way
		? first.way === 'seek' && oppositesOf(first.feature).includes(second.feature)
		: first.feature === second.feature
function settledBy(winner: Claim, loser: Claim): SettledBy {
	const [first, second] = [winner.strongest, loser.strongest]
	if (placeOf(first) !== placeOf(second)) return 'rank'
	if ((first.severity ?? 0) !== (second.severity ?? 0)) return 'severity'
	return strengthPlace(first) === strengthPlace(second) ? 'order' : 'strength'
}
const rulesOf = ({ wishes }: Claim): string[] => [...new Set(wishes.map(({ rule }) => rule))]
const told = (loser: Claim, winner: Claim): Settled => ({
	feature: loser.feature,
	over: winner.feature,
	...state('settled.feature', {
		feature: loser.feature,
		way: loser.way,
		rules: rulesOf(loser),
		rank: rankOf(loser.strongest),
		over: winner.feature,
		overWay: winner.way,
		overRules: rulesOf(winner),
		overRank: rankOf(winner.strongest),
		by: settledBy(winner, loser),
	}),
})
/** What gave way, and what stands in its place. */
interface Lost {
	loser: Claim
	winner: Claim
}
/**
 * What an opposite pair tells is not told again: the same rules avoid what is sought instead of
 * what they seek.
 */
const toldByAnother = ({ loser, winner }: Lost, lost: readonly Lost[]): boolean =>
	loser.way === 'avoid' &&
	lost.some(
		(other) =>
			other.loser.way === 'seek' &&
			other.winner.feature === winner.feature &&
			rulesOf(loser).every((rule) => rulesOf(other.loser).includes(rule)),
	)

/** An avoidance whose rules all lost what they sought instead goes with it: the heel is not avoided flat and raised. */
const goesWith = ({ way, feature, wishes }: Claim, lost: readonly Lost[]): boolean =>
	way === 'avoid' &&
	lost.some(
		({ loser, winner }) =>
			loser.way === 'seek' &&
			winner.way === 'avoid' &&
			oppositesOf(loser.feature).includes(feature) &&
			wishes.every(({ rule }) => loser.wishes.some((wish) => wish.rule === rule)),
	)
/**
 * The wishes that stand, in the order given, and those that gave way, each told once. The same
 * wishes give the same answer.
 */
export function settle(seek: readonly FeatureWish[], avoid: readonly FeatureWish[]): Standing {
	const standing: Claim[] = []
	const lost: Lost[] = []
	for (const claim of [...claimsOf(seek, 'seek'), ...claimsOf(avoid, 'avoid')].toSorted(
		compareClaims,
	)) {
		const against = standing.filter((other) => pullApart(other, claim))
		// of an opposite that is sought and an avoidance, what is sought instead says more
		const winner = against.find(({ feature }) => feature !== claim.feature) ?? against[0]
		if (winner === undefined) standing.push(claim)
		else lost.push({ loser: claim, winner })
	}
	const left = standing.filter((claim) => !goesWith(claim, lost))
	const stands = (way: Claim['way'], { feature }: FeatureWish): boolean =>
		left.some((claim) => claim.way === way && claim.feature === feature)
	return {
		seek: seek.filter((wish) => stands('seek', wish)),
		avoid: avoid.filter((wish) => stands('avoid', wish)),
		settled: lost
			.filter((one) => !toldByAnother(one, lost))
			.map(({ loser, winner }) => told(loser, winner)),
		contested: new Set(
			lost
				.filter(({ loser, winner }) => settledBy(winner, loser) !== 'rank')
				.map(({ winner }) => winner.feature),
		),
	}
}
