/**
 * Positions of play: whatever way one of its words is written, it means the same position, and no
 * word means two within one code. The words themselves are common usage, no source.
 */
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
	type Position,
	positionOf,
	positionsIn,
	positionsOf,
} from '../../shared/engine/visit/positions.ts'
import { type Code, codes } from '../../shared/engine/visit/terms.ts'

const wordsOf = ({ name, synonyms }: Position) => [name, ...synonyms]
const entries = codes.flatMap((code) =>
	positionsIn(code).flatMap((position) =>
		wordsOf(position).map((word) => ({ code, position, word })),
	),
)
/** A word with its gaps, its letters' case and its ends written otherwise. */
const written = (word: string) =>
	fc
		.tuple(
			fc.constantFrom('', ' ', '-', '  ', ' - ', '. '),
			fc.array(fc.boolean(), { minLength: word.length, maxLength: word.length }),
			fc.constantFrom('', ' ', '  '),
		)
		.map(([gap, capitals, end]) => {
			const cased = [...word].map((letter, at) =>
				capitals[at] ? letter.toUpperCase() : letter.toLowerCase(),
			)
			return `${end}${cased.join('').replaceAll(/[\s-]+/g, gap)}${end}`
		})
it('every synonym finds its position, however it is spaced, hyphened and capitalised', () => {
	fc.assert(
		fc.property(
			fc
				.constantFrom(...entries)
				.chain((entry) => written(entry.word).map((typed) => ({ ...entry, typed }))),
			({ code, position, typed }) => {
				expect(positionOf(typed, code)).toBe(position)
				expect(positionsOf(typed, code)).toEqual([position])
			},
		),
		{ numRuns: 2000 },
	)
})
it.each(codes)('no word of %s names two positions, and each has a name of its own', (code) => {
	const words = positionsIn(code).flatMap((position) =>
		wordsOf(position).map((word) => word.toLowerCase().replaceAll(/[^a-z0-9]/g, '')),
	)
	expect(words.filter((word, at) => words.indexOf(word) !== at)).toEqual([])
})
it('what no list knows says nothing, and nothing typed throws', () => {
	fc.assert(
		fc.property(
			fc.string(),
			fc.option(fc.constantFrom(...codes), { nil: undefined }),
			(typed, code) => {
				const known = entries.some(
					(entry) => (code ?? entry.code) === entry.code && positionOf(typed, entry.code),
				)
				if (!known) expect(positionOf(typed, code)).toBeUndefined()
			},
		),
	)
	expect(positionsOf('propeller', 'rugby-union')).toEqual([])
	expect(positionsOf('', 'rugby-union')).toEqual([])
})
describe('as players say it', () => {
	it.each([
		['rugby-union', 'fly half', 'Fly-half'],
		['rugby-union', 'number 8', 'Number eight'],
		['rugby-union', 'No 8', 'Number eight'],
		['rugby-union', 'full back', 'Full-back'],
		['rugby-union', 'second five-eighth', 'Inside centre'],
		['rugby-union', 'Scrum Half', 'Scrum-half'],
		['rugby-league', 'five-eighth', 'Stand-off'],
		['rugby-league', 'lock', 'Loose forward'],
		['association', 'keeper', 'Goalkeeper'],
		['association', 'centre-half', 'Centre-back'],
		['australian', 'CHF', 'Centre half-forward'],
		['gaelic', 'half back', 'Wing-back'],
		['american', 'QB', 'Quarterback'],
		['futsal', 'ala', 'Winger'],
		['touch', 'Link', 'Link'],
	] as [Code, string, string][])('%s: %s is the %s', (code, typed, name) =>
		expect(positionOf(typed, code)?.name).toBe(name),
	)
	it('a scrum-half does not push in the scrum; a lock does in union', () => {
		expect(positionOf('scrum-half', 'rugby-union')?.roles).not.toContain('scrum')
		expect(positionOf('lock', 'rugby-union')?.roles).toContain('scrum')
	})
	it('several in one text are all understood', () =>
		expect(
			positionsOf('Lock / number 8, goal kicker', 'rugby-union').map(({ name }) => name),
		).toEqual(['Lock', 'Number eight', 'Goal kicker']))
	it('with no code a word counts where all codes mean one position by it', () => {
		expect(positionOf('goalkeeper', undefined)?.roles).toEqual(['contest'])
		expect(positionOf('lock', undefined)).toBeUndefined()
		// running position in some codes, contest position in others
		expect(positionOf('full-back', undefined)?.roles).toEqual([])
	})
})
