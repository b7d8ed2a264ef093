/** The wishes of all rules for one feature as one, with the sentences that a model may earn. */
import type { FeatureWish, MatchReason } from '../../findings/assessment.ts'
import { need } from '../../plain/need.ts'
import type { Basis, Because, Strength } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { strengthOrder } from '../../protocol/settling.table.ts'
import { rounded } from '../../visit/sides.ts'
import type { Feature } from '../../visit/terms.ts'
import { state } from '../../words/statement.ts'
import { once } from '../once.ts'

/** What a wish on that basis costs where it is not met. */
const pointsByStrength: Readonly<Record<Strength, ThresholdKey>> = {
	standard: 'footwear.pointsFirm',
	guideline: 'footwear.pointsFirm',
	trial: 'footwear.pointsFirm',
	cohort: 'footwear.pointsCohort',
	'cross-sectional': 'footwear.pointsCohort',
	expert: 'footwear.pointsPractice',
	practice: 'footwear.pointsPractice',
	clinic: 'footwear.pointsPractice',
}
const place = (strength: Strength) => strengthOrder.indexOf(strength)

export interface Wish {
	feature: Feature
	because: Because[]
	basis: Basis
	/** The rules that wish it, by id. */
	rules: readonly string[]
	points: number
	/** Sought or avoided so much that a model against it is stopped. */
	strict: boolean
	has: MatchReason
	lacks: MatchReason
	betterAvoided: MatchReason
}
function asOne(
	feature: Feature,
	wishes: readonly FeatureWish[],
	contested: ReadonlySet<Feature>,
	protocol: Protocol,
): Wish {
	const [strongest] = [...wishes].sort(
		(first, second) => place(first.basis.strength) - place(second.basis.strength),
	)
	const { basis } = need(strongest, 'a wish for the feature')
	const pointsKey = pointsByStrength[basis.strength]
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
		strict: wishes.some((wish) => wish.strict === true),
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
 * @param contested features that stand over others of the same place: they count for less
 */
export function wishesByFeature(
	wishes: readonly FeatureWish[],
	contested: ReadonlySet<Feature>,
	protocol: Protocol,
): Wish[] {
	const byFeature = new Map<Feature, FeatureWish[]>()
	for (const wish of wishes)
		byFeature.set(wish.feature, [...(byFeature.get(wish.feature) ?? []), wish])
	return [...byFeature].map(([feature, same]) => asOne(feature, same, contested, protocol))
}
