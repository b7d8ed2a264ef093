/** What the recorded conditions ask of a shoe in their own rows, beside the rules of this room. */
import { conditionWishes } from '../conditions/wishes.ts'
import type { FeatureWish } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Feature } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'

interface AskedByCondition {
	seek: FeatureWish[]
	avoid: FeatureWish[]
	finding: Finding
}
/** One for each recorded condition that asks something, with the finding that says so. */
export const askedByConditions = (visit: Visit): AskedByCondition[] =>
	conditionWishes(visit).map(({ rule, statement, seek, avoid, because, basis }) => {
		const wish = (feature: Feature): FeatureWish => ({
			...statement,
			feature,
			because,
			basis,
			rule,
		})
		return {
			seek: seek.map(wish),
			avoid: avoid.map(wish),
			finding: findingOf(statement, { of: rule, side: 'none', level: 'advise', because, basis }),
		}
	})
