/** Which of the room's own wishes pull apart; `settle.ts` says which of them stands. */
import type { Contradiction, FeatureWish } from '../findings/footwear-result.ts'
import type { Feature } from '../visit/terms.ts'
import { type Statement, state } from '../words/statement.ts'
import { opposites } from './opposites.table.ts'

/** As it is made now, with its code. */
type Contradicting = Contradiction & Statement

/** The rules that wish a feature, by id, each once. */
const rulesFor = (wishes: readonly FeatureWish[], feature: Feature): string[] => [
	...new Set(wishes.filter((wish) => wish.feature === feature).map((wish) => wish.rule)),
]

/**
 * A feature both sought and avoided, or both of an opposite pair sought. What a pair tells is not
 * told again: where the rules that avoid a feature are those that seek its opposite.
 */
export function contradictionsOf(
	seek: readonly FeatureWish[],
	avoid: readonly FeatureWish[],
): Contradicting[] {
	const bothSought = opposites.filter((pair) =>
		pair.every((feature) => seek.some((wish) => wish.feature === feature)),
	)
	const toldByPair = (feature: Feature): boolean =>
		bothSought.some((pair) => {
			const other = pair[pair[0] === feature ? 1 : 0]
			const seekOther = rulesFor(seek, other)
			return (
				pair.includes(feature) && rulesFor(avoid, feature).every((rule) => seekOther.includes(rule))
			)
		})
	const soughtAndAvoided = [...new Set(seek.map((wish) => wish.feature))].filter(
		(feature) => avoid.some((wish) => wish.feature === feature) && !toldByPair(feature),
	)
	return [
		...soughtAndAvoided.map((feature) => ({
			feature,
			...state('footwear.contradiction-of-one', {
				feature,
				seekRules: rulesFor(seek, feature),
				avoidRules: rulesFor(avoid, feature),
			}),
		})),
		...bothSought.map(([feature, other]) => ({
			feature,
			other,
			...state('footwear.contradiction-of-two', {
				feature,
				other,
				featureRules: rulesFor(seek, feature),
				otherRules: rulesFor(seek, other),
			}),
		})),
	]
}
