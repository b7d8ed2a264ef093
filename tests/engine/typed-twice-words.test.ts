/** What was typed twice is named as its field is, and each entry fits on a button. */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { leavesOf } from '../../shared/desk/outreach/leaves.ts'
import { entriesOf } from '../../shared/engine/visit/entries.ts'
import { entryAt } from '../../shared/engine/visit/entry-at.ts'
import { entryName, entryWords } from '../../shared/engine/words/en/typed-twice.ts'
import { wholeVisit } from './random-visit.ts'
import { draftOf } from './typing.ts'

it.each<[string[], string]>([
	[['visit', 'feet', 'left', 'ballWidthMm'], 'Ball width, left'],
	[['visit', 'conditions', 'hallux-valgus', 'note'], 'Hallux valgus: Note'],
	[['visit', 'conditions', 'hallux-valgus 2', 'painWorst'], 'Hallux valgus 2: Worst pain'],
	[['visit', 'conditions', 'hallux-valgus'], 'Hallux valgus'],
	[['visit', 'footwear', 'p1', 'size'], 'Match boots: Size'],
	[['visit', 'screening', 'injury'], 'Flags: Injury: Ottawa ankle and foot rules'],
	[['visit', 'season'], 'The season'],
	[['decisions', 'answers', 'size'], 'Decide: size'],
	[['decisions', 'answers', 'pair.match'], 'Decide: pair for matches'],
	[['decisions', 'insert', 'left', 'heel-cup'], 'Insert, left, heel cup'],
	[['decisions', 'heelRaiseMm'], 'Heel raise'],
	[['decisions', 'agreement', 'answer'], 'Answer to the plan'],
	[['decisions', 'reviewDate'], 'Review'],
	[['raw', 'questions.size.min'], 'Text that is no value yet'],
])('%j is %s', (keys, name) => expect(entryName(keys, 'match boots')).toBe(name))

describe('an entry in words', () => {
	const width = ['visit', 'feet', 'left', 'ballWidthMm']
	it.each<[string[], Parameters<typeof entryWords>[0], string]>([
		[width, [104], '104 mm'],
		[width, [[104, 105]], '104 mm, 105 mm'],
		[width, [null, '24,7x'], "'24,7x', no value yet"],
		[width, [null, null, 'pain'], 'not measured: pain'],
		[width, null, 'nothing'],
		[['visit', 'screening', 'nightPain'], [false], 'no'],
		[['visit', 'conditions', 'hallux-valgus'], null, 'taken out'],
		[['visit', 'conditions', 'hallux-valgus'], {}, 'kept'],
		[
			['decisions', 'answers', 'size'],
			[{ question: 'size', choice: 'set-aside', why: 'not today', of: 'a' }],
			'set aside, not today',
		],
	])('%j: %j is %s', (keys, entry, words) => expect(entryWords(entry, keys)).toBe(words))
	it('is never a code, nor longer than a line, whatever it is', () => {
		fc.assert(
			fc.property(wholeVisit, (visit) => {
				const draft = draftOf(visit)
				for (const path of leavesOf(entriesOf(draft)).keys()) {
					const keys = path.split('\u0000')
					const words = entryWords(entryAt(draft, keys) ?? null, keys)
					expect(words).not.toMatch(/\[object|undefined|NaN/)
					expect(words.length).toBeLessThanOrEqual(60)
					expect(entryName(keys)).not.toMatch(/undefined|^\s*$/)
				}
			}),
			{ numRuns: 20 },
		)
	})
})
