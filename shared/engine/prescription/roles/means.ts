/** What is worth buying first, where not everything can be bought. */
import type { PlayerFacts, RolePair } from '../../findings/assessment.ts'
import { pairRoles } from '../../visit/terms.ts'
import { type AtHand, isOfRole } from './owned.ts'

/** The most dangerous first: what must not be worn any more, then what is worn out or outgrown. */
function danger({ role }: RolePair, atHand: readonly AtHand[]): number {
	const verdicts = atHand.filter((one) => isOfRole(one, role)).map(({ verdict }) => verdict)
	if (verdicts.includes('stop-wearing')) return 2
	return verdicts.includes('replace') ? 1 : 0
}
/**
 * Where one pair only, or one at a time, may be bought, the one that is worth most: the most
 * dangerous first, then the match. The others go on with what there is.
 */
export function withinMeans(
	pairs: readonly RolePair[],
	means: PlayerFacts['means'],
	atHand: readonly AtHand[],
): RolePair[] {
	if (means === undefined || means === 'free') return [...pairs]
	const [first] = pairs
		.filter((pair) => pair.means === 'buy')
		.toSorted(
			(one, other) =>
				danger(other, atHand) - danger(one, atHand) ||
				pairRoles.indexOf(one.role) - pairRoles.indexOf(other.role),
		)
	return pairs.map((pair) =>
		pair.means !== 'buy' || pair === first ? pair : { ...pair, means: 'with-what-you-have' },
	)
}
