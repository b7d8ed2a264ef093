/** What the player says of a pair: a pair that hurts is not talked into fitting. */
import type { Protocol } from '../../protocol/protocol.ts'
import type { Pair } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import type { Ground, PairPicture } from './ground.ts'

/** How it felt at first, told at this visit; what was told before is of its day. */
const firstToday = ({ onFoot }: Pair, { visitDate }: PairPicture): number | undefined =>
	onFoot?.tried === undefined || onFoot.tried === visitDate ? onFoot?.comfortFirst : undefined
/** Comfort as it was told last: today's, after some sessions, or else at first wear. */
const latestComfort = (pair: Pair, picture: PairPicture): number | undefined =>
	pair.comfort ?? pair.onFoot?.comfortLater ?? firstToday(pair, picture)
/** Told to be uncomfortable; what was not asked is no complaint. */
export function isUncomfortable(pair: Pair, picture: PairPicture, protocol: Protocol): boolean {
	const comfort = latestComfort(pair, picture)
	return comfort !== undefined && comfort < protocol.value('footwear.ownedComfortLeast')
}
/** What hurt and comfort come to. */
export function comfortGrounds(pair: Pair, picture: PairPicture, protocol: Protocol): Ground[] {
	if (pair.hurts === true)
		return picture.footAtRisk
			? [{ verdict: 'stop-wearing', statement: state('owned.hurts-at-risk') }]
			: [
					{
						verdict: 'modify',
						statement: state('owned.hurts'),
						work: 'find-sore-place',
						hurts: true,
					},
				]
	if (!isUncomfortable(pair, picture, protocol)) return []
	return [
		{
			verdict: 'modify',
			statement: state('owned.uncomfortable', { comfort: latestComfort(pair, picture) ?? 0 }),
			work: 'find-sore-place',
		},
	]
}
