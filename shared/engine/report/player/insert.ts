/** The insert that the clinician decided on: what it is for, how it is worn in, when it comes out. */
import type { DecidedElement } from '../../insert/decided.ts'
import { bothSides } from '../../visit/sides.ts'
import { spokenTo } from '../../words/statement.ts'
import { heading, type Section } from '../base.ts'
import { standingInsert } from '../insert-order.ts'

/** What a player is told of an element: what it does, and what to mind. */
const toldOf = ({ element }: DecidedElement): string[] =>
	[element, ...(element.cautioned ?? [])].flatMap(
		(statement) => spokenTo('player', statement) ?? [],
	)
/** Nothing before the clinician decided: a proposal is not what a player wears. */
export const insert: Section = (input, _notes, t) => {
	const standing = standingInsert(input)
	const feet = bothSides.filter((side) => standing[side].some(({ decision }) => decision))
	const told = feet.map((side) => ({
		side,
		says: [...new Set(standing[side].flatMap(toldOf))].join(' '),
	}))
	const items = told.flatMap(({ side, says }) =>
		says === '' ? [] : [`${t(`common.${side}`)}: ${says}`],
	)
	if (items.length === 0) return []
	const wearIn = standing.result.wearIn.flatMap((step) => spokenTo('player', step) ?? [])
	return [
		heading(t('player.insert')),
		{ kind: 'list', items },
		...(wearIn.length === 0
			? []
			: [
					heading(t('player.insertWearIn'), { level: 2 }),
					{ kind: 'list' as const, items: wearIn },
				]),
	]
}
