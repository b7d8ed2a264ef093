/** The insert that the clinician decided on: what it is for, how it is worn in, when it comes out. */
import type { DecidedElement } from '../../insert/decided.ts'
import { bothSides } from '../../visit/sides.ts'
import { heading, type Section } from '../base.ts'
import { standingInsert } from '../insert-order.ts'
import { type Reader, readerOf, toldBy } from '../reader.ts'

/** What a player is told of an element: what it does, and what to mind. */
const toldOf = (reader: Reader, { element }: DecidedElement): string[] =>
	[element, ...(element.cautioned ?? [])].flatMap((statement) => toldBy(reader, statement) ?? [])
/** Nothing before the clinician decided: a proposal is not what a player wears. */
export const insert: Section = (input, _notes, t) => {
	const standing = standingInsert(input)
	const reader = readerOf('player', input)
	const feet = bothSides.filter((side) => standing[side].some(({ decision }) => decision))
	const told = feet.map((side) => ({
		side,
		says: [...new Set(standing[side].flatMap((one) => toldOf(reader, one)))].join(' '),
	}))
	const items = told.flatMap(({ side, says }) =>
		says === '' ? [] : [`${t(`common.${side}`)}: ${says}`],
	)
	if (items.length === 0) return []
	const wearIn = standing.result.wearIn.flatMap((step) => toldBy(reader, step) ?? [])
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
