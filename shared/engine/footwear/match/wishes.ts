/** The wishes of all rules for one feature as one, with the sentences that a model may earn. */
import type { FeatureWish, MatchReason } from '../../findings/assessment.ts'
import { need } from '../../plain/need.ts'
import type { Basis, Because, Strength } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { type Feature, termWords } from '../../visit/terms.ts'

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
	/** The rules that wish it, in words. */
	rules: string
	words: string
	points: number
	/** To be avoided so much that it stops a model. */
	strict: boolean
	has: MatchReason
	lacks: MatchReason
	betterAvoided: MatchReason
}
function withoutRepeats(reasons: readonly Because[]): Because[] {
	const seen = new Set<string>()
	return reasons.filter(({ measure, value }) => {
		const name = `${measure} ${value}`
		if (seen.has(name)) return false
		seen.add(name)
		return true
	})
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
	const because = withoutRepeats(wishes.flatMap((wish) => wish.because))
	const words = termWords(feature)
	const rules = [...new Set(wishes.map((wish) => termWords(wish.rule)))].join(', ')
	return {
		feature,
		because,
		basis,
		rules,
		words,
		points,
		strict: wishes.some((wish) => strictRules.has(wish.rule)),
		has: {
			rule: `seek-${feature}`,
			says: `Has what is sought: ${words} (${rules}).`,
			because,
			basis,
		},
		lacks: {
			rule: `seek-${feature}`,
			says: `Lacks what is sought: ${words} (${rules}).`,
			points,
			because,
			basis,
		},
		betterAvoided: {
			rule: `avoid-${feature}`,
			says: `Has what is better avoided: ${words} (${rules}).`,
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
