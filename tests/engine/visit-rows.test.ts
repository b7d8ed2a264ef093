/** What stands in a signed visit is read on its page, whichever field holds it. */
import { expect, test } from 'vitest'
import { groupsOf } from '../../renderer/screens/visit/rows.ts'
import { outcomeOf, visitOf } from './gate-visit.ts'

test('what brought the player, outcomes, what was not asked and what may be bought are read', () => {
	const visit = visitOf(
		{ fever: true },
		{
			complaint: 'an invented sore heel',
			means: 'one-pair',
			coreSetAside: [{ question: 'reduced-sensation', why: 'cast on' }],
			outcomes: [outcomeOf('fever', ['sport'])],
		},
	)
	const groups = groupsOf(visit)
	const words = (title: string) =>
		groups.find((group) => group.title === title)?.rows.flatMap(({ values }) => values)
	expect(words('What brought the player')).toEqual(['an invented sore heel'])
	expect(words('Pairs that may be bought')).toEqual(['one pair'])
	expect(words('Core questions that were not asked')).toContain('cast on')
	const [{ found, by } = { found: '', by: '' }] = visit.outcomes ?? []
	expect(words('Outcomes of what was held')).toEqual(expect.arrayContaining([found, by]))
})
