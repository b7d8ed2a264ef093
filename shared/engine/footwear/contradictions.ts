/** Wishes that pull apart: both are shown, never averaged. */
import type { FeatureWish, FootwearResult } from '../findings/assessment.ts'
import { type Feature, termWords } from '../visit/terms.ts'

const opposites: readonly (readonly [Feature, Feature])[] = [
	['firm-heel-counter', 'soft-heel-counter'],
	['stiff-forefoot', 'flexible-forefoot'],
	['wide-fitting', 'narrow-fitting'],
	['raised-heel', 'low-heel'],
	['round-studs', 'bladed-studs'],
	['long-studs', 'short-studs'],
	['high-heel-counter', 'low-heel-collar'],
	['soft-ground-sole', 'artificial-ground-sole'],
	['indoor-sole', 'firm-ground-sole'],
	['low-mass', 'full-length-cushioning'],
]
/** The rules that wish a feature, in words; '' where none does. */
const rulesFor = (wishes: readonly FeatureWish[], feature: Feature): string =>
	[
		...new Set(
			wishes.filter((wish) => wish.feature === feature).map((wish) => termWords(wish.rule)),
		),
	].join(', ')

/** A feature both sought and avoided, or both of an opposite pair sought. */
export function contradictionsOf(
	seek: readonly FeatureWish[],
	avoid: readonly FeatureWish[],
): FootwearResult['contradictions'] {
	const soughtAndAvoided = [...new Set(seek.map((wish) => wish.feature))].filter((feature) =>
		avoid.some((wish) => wish.feature === feature),
	)
	const bothSought = opposites.filter((pair) =>
		pair.every((feature) => seek.some((wish) => wish.feature === feature)),
	)
	const sought = (feature: Feature) => `${termWords(feature)} (${rulesFor(seek, feature)})`
	return [
		...soughtAndAvoided.map((feature) => ({
			feature,
			says:
				`${termWords(feature)} is wanted (${rulesFor(seek, feature)}) and to be avoided ` +
				`(${rulesFor(avoid, feature)}): weigh the reasons and decide.`,
		})),
		...bothSought.map(([feature, other]) => ({
			feature,
			says:
				`${sought(feature)} and ${sought(other)} are both wanted: weigh the reasons and ` +
				'decide.',
		})),
	]
}
