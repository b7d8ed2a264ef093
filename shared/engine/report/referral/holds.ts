/** What is held here, since when, and what ends it: for whoever can end it. */
import type { Hold, Holdable } from '../../findings/assessment.ts'
import { bothSides } from '../../visit/sides.ts'
import { holdableNames, untilNames } from '../../words/en/gate.ts'
import { capital, dateWords, sideWords } from '../../words/words.ts'
import { heading, type Section } from '../base.ts'
import { planOf } from '../plan-of.ts'

/** What a doctor is told of: buying, shelf and season are this clinic's own affair. */
const toldHolds = [
	'sport',
	'match',
	'impact',
	'weight',
	'test',
	'exercise',
	'insert',
	'raise',
] as const satisfies readonly Holdable[]
const isTold = ({ what }: Pick<Hold, 'what'>): boolean => toldHolds.some((told) => told === what)
/** What is held here, since when, and what ends it. */
export const holds: Section = (input, _notes, t) => {
	const { gate } = planOf(input)
	const parts = [
		{ side: undefined, holds: gate.person.holds },
		...bothSides.map((side) => ({ side, holds: gate[side].holds })),
	]
	const items = parts.flatMap((part) => {
		const told = part.holds.filter(isTold)
		const alike = Map.groupBy(told, ({ until, since }) => `${until} ${since}`)
		return [...alike.values()].flatMap((group) => {
			const [first] = group
			if (!first) return []
			const whats = toldHolds.filter((what) => group.some((hold) => hold.what === what))
			const named = whats.map((what) => holdableNames[what]).join(', ')
			return [
				t('referral.hold', {
					what: capital(part.side ? `${named} (${sideWords[part.side]})` : named),
					until: untilNames[first.until],
					since: dateWords(first.since),
				}),
			]
		})
	})
	if (items.length === 0) return []
	return [heading(t('referral.holds')), { kind: 'list', items }]
}
