/**
 * Two windows on one draft: what one typed is never overwritten by what the other knew of before,
 * and what both typed is kept of both, whatever it is.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { DraftContent } from '../../shared/desk/visits/calls.ts'
import { changedEntries, takeIn } from '../../shared/desk/visits/join-typed.ts'
import { contentOf, entriesOf } from '../../shared/engine/visit/entries.ts'
import { entryAt } from '../../shared/engine/visit/entry-at.ts'
import { rowNames } from '../../shared/engine/visit/rows.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { wholeVisit } from './random-visit.ts'
import { draftOf, joined, leaves } from './typing.ts'

/** A visit with some of the entries of another: what a hand may make of it. */
const mixed = (base: Visit, other: Visit, kept: readonly boolean[]): Visit => {
	const heads = ['play', 'body', 'feet', 'ankles', 'posture', 'screening', 'notes', 'complaint']
	const picked = heads.filter((_, at) => kept[at % kept.length])
	const entries = picked.map((head) => [head, other[head as keyof Visit]])
	return { ...base, ...Object.fromEntries(entries.filter(([, value]) => value !== undefined)) }
}
const some = fc.array(fc.boolean(), { minLength: 8, maxLength: 8 })

describe('a draft as entries', () => {
	it('is the same draft again', () => {
		fc.assert(
			fc.property(wholeVisit, ({ notMeasured = {}, ...rest }) => {
				const visit = Object.keys(notMeasured).length > 0 ? { ...rest, notMeasured } : rest
				const draft = draftOf(visit, {
					raw: {
						'feet.left.heelToToeMm': '24,7x',
						'questions.size': 'a',
						'outcomes.x.none.by': 'b',
					},
				})
				const again = contentOf(entriesOf(draft), visit.player, rowNames(draft))
				// a field has one of value, text and reason on the screen; here it may have two
				expect(changedEntries(draft, again as object as DraftContent)).toEqual([])
			}),
		)
	})
})
describe('two who typed', () => {
	it('keep every entry of both; where they differ mine stands and theirs is found', () => {
		fc.assert(
			fc.property(wholeVisit, wholeVisit, wholeVisit, some, some, (start, one, two, of, to) => {
				const base = draftOf(start)
				const mine = draftOf(mixed(start, one, of))
				const theirs = draftOf(mixed(start, two, to))
				const { content, twice } = joined({ base, mine, theirs })
				const [was, left, right, now] = [base, mine, theirs, content].map(leaves)
				const found = twice.map(({ keys }) => keys.join('\u0000'))
				const isFound = (path: string) =>
					found.some((at) => path === at || path.startsWith(`${at}\u0000`))
				for (const path of new Set([...was!.keys(), ...left!.keys(), ...right!.keys()])) {
					if (isFound(path)) continue
					const stands = left!.get(path) === was!.get(path) ? right!.get(path) : left!.get(path)
					expect(now!.get(path), path).toBe(stands)
				}
				for (const { keys, other } of twice)
					expect(JSON.stringify(other)).toBe(JSON.stringify(entryAt(theirs, keys)))
			}),
			{ numRuns: 30 },
		)
	})
	it('find the same, whichever of them saves first, and lose nothing where nothing is found', () => {
		fc.assert(
			fc.property(wholeVisit, wholeVisit, wholeVisit, some, some, (start, one, two, of, to) => {
				const base = draftOf(start)
				const mine = draftOf(mixed(start, one, of))
				const theirs = draftOf(mixed(start, two, to))
				const first = joined({ base, mine, theirs })
				const second = joined({ base, mine: theirs, theirs: mine })
				const paths = (twice: typeof first.twice) => twice.map(({ keys }) => keys.join('.')).sort()
				expect(paths(first.twice)).toEqual(paths(second.twice))
				if (first.twice.length > 0) return
				expect(leaves(first.content)).toEqual(leaves(second.content))
			}),
			{ numRuns: 30 },
		)
	})
	it('are joined as they are where only one typed', () => {
		fc.assert(
			fc.property(wholeVisit, wholeVisit, some, (start, one, of) => {
				const base = draftOf(start)
				const changed = draftOf(mixed(start, one, of))
				for (const three of [
					{ base, mine: changed, theirs: base },
					{ base, mine: base, theirs: changed },
				]) {
					const { content, twice } = joined(three)
					expect(twice).toEqual([])
					expect(leaves(content)).toEqual(leaves(changed))
				}
			}),
			{ numRuns: 30 },
		)
	})
})
describe('what a window takes in', () => {
	it('leaves what both typed to the host, which finds it', () => {
		fc.assert(
			fc.property(wholeVisit, wholeVisit, wholeVisit, some, some, (start, one, two, of, to) => {
				const base = draftOf(start)
				const mine = draftOf(mixed(start, one, of))
				const theirs = draftOf(mixed(start, two, to))
				const direct = joined({ base, mine, theirs })
				const window = takeIn({ base, mine, theirs }, [])
				const later = joined({ base: window.base, mine: window.content, theirs })
				expect(leaves(later.content)).toEqual(leaves(direct.content))
				expect(later.twice).toEqual(direct.twice)
			}),
			{ numRuns: 30 },
		)
	})
})
