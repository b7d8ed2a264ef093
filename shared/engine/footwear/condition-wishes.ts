/** What the recorded conditions ask of a shoe in their own rows, beside the rules of this room. */
import { conditionWishes } from '../conditions/wishes.ts'
import type { FeatureWish } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { SettlingRank } from '../protocol/settling.table.ts'
import type { Feature } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { worstPain } from './rules/rule.ts'

interface AskedByCondition {
	seek: FeatureWish[]
	avoid: FeatureWish[]
	finding: Finding
}
/** One for each recorded condition that asks something, with the finding that says so. */
export const askedByConditions = (visit: Visit, protocol: Protocol): AskedByCondition[] =>
	conditionWishes(visit).map(({ rule, statement, seek, avoid, because, basis, recorded }) => {
		const now = recorded.filter(({ status }) => status !== 'past')
		const rank: SettlingRank = now.length > 0 ? 'injury-now' : 'recurrent-injury'
		const wish = (feature: Feature): FeatureWish =>
			present({
				...statement,
				feature,
				because,
				basis,
				rule,
				rank,
				severity: worstPain(now, protocol),
			})
		return {
			seek: seek.map(wish),
			avoid: avoid.map(wish),
			finding: findingOf(statement, { of: rule, side: 'none', level: 'advise', because, basis }),
		}
	})
