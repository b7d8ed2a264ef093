/** What the player says of a pair: a pair that hurts is not talked into fitting. */
import type { Protocol } from '../../protocol/protocol.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import type { Ground, PairPicture } from './ground.ts'

/** Told to be uncomfortable; what was not asked is no complaint. */
export const isUncomfortable = ({ comfort }: Pair, protocol: Protocol): boolean =>
	comfort !== undefined && comfort < protocol.value('footwear.ownedComfortLeast')
/** What hurt and comfort come to. */
export function comfortGrounds(
	pair: Pair,
	{ footAtRisk }: PairPicture,
	protocol: Protocol,
): Ground[] {
	if (pair.hurts === true)
		return footAtRisk
			? [{ verdict: 'stop-wearing', statement: state('owned.hurts-at-risk') }]
			: [
					{
						verdict: 'modify',
						statement: state('owned.hurts'),
						work: 'find-sore-place',
						hurts: true,
					},
				]
	if (!isUncomfortable(pair, protocol)) return []
	return [
		{
			verdict: 'modify',
			statement: state('owned.uncomfortable', { comfort: pair.comfort ?? 0 }),
			work: 'find-sore-place',
		},
	]
}
