/** The wishes of all rules for one feature as one, with the sentences that a model may earn. */
import type { FeatureWish, MatchReason } from '../../findings/assessment.ts'
import { need } from '../../plain/need.ts'
import type { Basis, Because, Strength } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Feature } from '../../visit/terms.ts'
import { state } from '../../words/statement.ts'
import { once } from '../once.ts'

/** Strongest first, with what a wish on that basis costs where it is not met. */
const pointsByStrength: readonly (readonly [Strength, ThresholdKey])[] = [
	['standard', 'footwear.pointsFirm'],
	['guideline', 'footwear.pointsFirm'],
	['trial', 'footwear.pointsFirm'],
	['cohort', 'footwear.pointsCohort'],
	['cross-sectional', 'footwear.pointsCohort'],
	['expert', 'footwear.pointsPractice'],
	['practice', 'footwear.pointsPractice'],
	['clinic', 'footwear.pointsPractice'],
]
const rank = (strength: Strength) => pointsByStrength.findIndex(([known]) => known === strength)

export interface Wish {
	feature: Feature
	because: Because[]
	basis: Basis
	/** The rules that wish it, by id. */
	rules: readonly string[]
	points: number
	/** To be avoided so much that it stops a model. */
	strict: boolean
	has: MatchReason
	lacks: MatchReason
	betterAvoided: MatchReason
}
function asOne(
	feature: Feature,
	wishes: readonly FeatureWish[],
	contested: ReadonlySet<Feature>,
	strictRules: ReadonlySet<string>,
	protocol: Protocol,
): Wish {
	const [strongest] = [...wishes].sort(
		(first, second) => rank(first.basis.strength) - rank(second.basis.strength),
	)
	const { basis } = need(strongest, 'a wish for the feature')
	const [, pointsKey] = need(pointsByStrength[rank(basis.strength)], 'the points of a strength')
	const share = contested.has(feature) ? protocol.value('footwear.pointsContested') : 1
	const points = rounded(protocol.value(pointsKey) * share, 2)
	const because = once(wishes.flatMap((wish) => wish.because))
	const rules = [...new Set(wishes.map((wish) => wish.rule))]
	const wished = { feature, rules }
	return {
		feature,
		because,
		basis,
		rules,
		points,
		strict: wishes.some((wish) => strictRules.has(wish.rule)),
		has: {
			rule: `seek-${feature}`,
			...state('match.has', wished),
			because,
			basis,
		},
		lacks: {
			rule: `seek-${feature}`,
			...state('match.lacks', wished),
			points,
			because,
			basis,
		},
		betterAvoided: {
			rule: `avoid-${feature}`,
			...state('match.better-avoided', wished),
			points,
			because,
			basis,
		},
	}
}
/**
 * One wish a feature, on its strongest basis, in the order in which features are first wished.
 * @param contested features that another rule contradicts: they count for less
 * @param strictRules ids of rules whose features to avoid stop a model
 */
export function wishesByFeature(
	wishes: readonly FeatureWish[],
	contested: ReadonlySet<Feature>,
	strictRules: ReadonlySet<string>,
	protocol: Protocol,
): Wish[] {
	const byFeature = new Map<Feature, FeatureWish[]>()
	for (const wish of wishes)
		byFeature.set(wish.feature, [...(byFeature.get(wish.feature) ?? []), wish])
	return [...byFeature].map(([feature, same]) =>
		asOne(feature, same, contested, strictRules, protocol),
	)
}
