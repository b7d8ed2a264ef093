/**
 * The one place where the sentences of the catalogue are read: each in the words of every reader,
 * filled in with what visits at hand and drawn ones give it. Everything else goes by codes.
 */
import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import { parseShelf } from '../../shared/engine/visit/shelf.ts'
import * as terms from '../../shared/engine/visit/terms.ts'
import { visitSchema } from '../../shared/engine/visit/visit.ts'
import { type ProblemWords, problemWords } from '../../shared/engine/words/en/problems.ts'
import { sentences } from '../../shared/engine/words/en/sentences.ts'
import type { Audience, Params, Sentence } from '../../shared/engine/words/sentence.ts'
import { contentOf, type Statement } from '../../shared/engine/words/statement.ts'
import { json, read } from '../demo.ts'
import { demoNames } from './demo-report.ts'
import { wholeVisit } from './random-visit.ts'

/** Terms whose own name is not what is said of them: shown, they are codes. */
const codes = Object.values(terms)
	.flatMap((value): unknown[] => (Array.isArray(value) ? value : []))
	.filter((term): term is string => typeof term === 'string' && term.includes('-'))
	// a firm-ground boot is English
	.filter((term) => !term.endsWith('-ground'))
	.filter((term) => !terms.termWords(term).includes(term))
const isCode = new RegExp(`(?<![\\w-])(${codes.join('|')})(?![\\w-])`)
const faults: readonly (readonly [what: string, pattern: RegExp])[] = [
	['a gap', /undefined|NaN|\bnull\b|\[object|[{}]/],
	['two spaces, or one before a mark', / {2}|^ | $| [,.;:]/],
	['two stops', /\.\./],
	['the wrong article', /(?:\ba|(?:^|\. )A) (?=[aei])(?!e(u|w))/],
	['a code', isCode],
	['a key', /\b[a-z]+[A-Z]\w*/],
	['a unit without a space', /\d(mm|cm|kg|deg|years?|weeks?|days?|months?|minutes?|hours?)\b/],
	['a long dash', /[\u2013\u2014]/],
	['a day as a file writes it', /\d{4}-\d\d-\d\d/],
]
const faultsOf = (text: string): string[] =>
	faults.filter(([, pattern]) => pattern.test(text)).map(([what]) => what)
/** A sentence begins with a capital or a figure and ends in a full stop. */
const isSentence = (text: string): boolean => /^[\p{Lu}\d"'(].*\.$/su.test(text)
/** A phrase stands inside a sentence or beside a name: no stop at its end, none in the middle. */
const isPhrase = (text: string): boolean => /^\S.*[^.\s]$/s.test(text) && !/\. [A-Z]/.test(text)

/** What of a finding is no sentence by itself, and why. */
const otherwise: Readonly<Record<string, (text: string) => boolean>> = {
	// begins with the name of the pair as it was typed
	'footwear.pair': (text) => isSentence(text.slice(text.indexOf(': ') + 2)),
	// an order fills it into a sentence of its own
	'insert.stopped': isPhrase,
}
const folder = new URL('./pictures/', import.meta.url)
const known = [
	...readdirSync(folder)
		.filter((name) => name.endsWith('.json'))
		.map((name) => visitSchema.parse(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))),
	...demoNames.map((name) => read(json(name))),
]
const parsed = parseShelf(json('shelf.json'))
const shelf = parsed.ok ? parsed.value : undefined
/** Everything stated in a result, in whatever part of it. */
function statedIn(value: unknown): Statement[] {
	if (value === null || typeof value !== 'object') return []
	const inside = Object.values(value).flatMap(statedIn)
	return 'code' in value && 'says' in value ? [value as Statement, ...inside] : inside
}
const drawn = fc.sample(fc.tuple(wholeVisit, wholeVisit), { numRuns: 60, seed: 4 })
const assessed = [
	...known.map((visit) => assess(visit, [], undefined, shelf)),
	...drawn.map(([visit, other]) =>
		assess(visit, [{ ...other, player: visit.player, visitDate: '2026-03-02' }], undefined, shelf),
	),
]
const findingCodes = new Set(assessed.flatMap(({ findings }) => findings.map(({ code }) => code)))
const readers = ['clinician', 'player', 'guardian', 'doctor', 'laboratory', 'coach'] as const
interface Spoken {
	code: string
	reader: Audience
	text: string
}
const words = sentences as unknown as Readonly<Record<string, Sentence<Params>>>
const spoken = [...new Map(statedIn(assessed).map((one) => [contentOf(one), one])).values()]
	.filter(({ code }) => Object.hasOwn(words, code))
	.flatMap(({ code, params }): Spoken[] =>
		readers.flatMap((reader) => {
			const text = words[code]![reader]?.(params)
			// what is made of parts may hold none for a reader
			return text ? [{ code, reader, text }] : []
		}),
	)
/** One of each code and reader with the same fault. */
const listed = (found: readonly (Spoken & { fault: string })[]): string[] => [
	...new Map(
		found.map(({ code, reader, text, fault }) => [
			`${code} ${reader} ${fault}`,
			`${code}, ${reader}: ${fault}: ${text}`,
		]),
	).values(),
]

describe('the finder of faults', () => {
	it.each([
		['undefined mm of room.', 'a gap'],
		['Two  spaces.', 'two spaces, or one before a mark'],
		['It ends..', 'two stops'],
		['Wear a artificial-ground sole.', 'the wrong article'],
		['Pain of calcaneal-apophysitis.', 'a code'],
		['The lungeCm is low.', 'a key'],
		['A raise of 4mm.', 'a unit without a space'],
		['Rest \u2014 then play.', 'a long dash'],
		['Since 2027-01-20.', 'a day as a file writes it'],
	])('in "%s" names %s', (text, fault) => expect(faultsOf(text)).toContain(fault))
	it('lets a plain sentence be', () =>
		expect(
			faultsOf(
				'A raise of 4 mm, an insert, a European size, firm-ground boots; the heel in A is high.',
			),
		).toEqual([]))
})
describe('the sentences of the catalogue', () => {
	it('are met: most codes that an assessment may state', () => {
		const rooms = Object.keys(words).filter((code) => !/^(season|chart|signing)\./.test(code))
		const met = new Set(spoken.map(({ code }) => code))
		expect(rooms.filter((code) => met.has(code)).length / rooms.length).toBeGreaterThan(0.6)
	})
	it('have no gap, code, key, bare unit or wrong mark, for any reader', () =>
		expect(
			listed(spoken.flatMap((one) => faultsOf(one.text).map((fault) => ({ ...one, fault })))),
		).toEqual([]))
	it('of findings are sentences; others are sentences or phrases', () =>
		expect(
			listed(
				spoken
					.filter(({ code, text }) => !isSentence(text) && !otherwise[code]?.(text))
					.filter(({ code, text }) => findingCodes.has(code) || !isPhrase(text))
					.map((one) => ({ ...one, fault: 'no sentence' })),
			),
		).toEqual([]))
})
describe('the words of a problem', () => {
	const filling = {
		expected: 'number',
		least: 1,
		most: 9,
		held: 12,
		of: 'entries',
		form: '4 to 10 digits',
		word: 'visit',
		format: 'lastwright-visit',
		statureCm: 150,
		visitDate: '2027-01-20',
		mostYears: 110,
		on: '2027-01-20',
		sign: 'an emoji',
		letters: 'U+0639',
		isSpelt: true,
		reading: 2,
		heelToToeMm: 248,
		from: '2027-01-01',
		to: '2027-06-30',
		unit: 'mm',
		other: 'the target',
		limit: 7.5,
	}
	it.each(Object.keys(problemWords) as (keyof typeof problemWords)[])('%s', (code) => {
		const { wrong, allowed } = problemWords[code] as ProblemWords<typeof filling>
		for (const text of [wrong(filling), allowed(filling)]) {
			expect(text).toMatch(/^\S.*[^.\s]$/)
			// a file is told its days as it writes them, and the key that helps
			const read = text.replace(/\d{4}-\d\d-\d\d(T[\d:]+Z)?/g, 'the day').replace('latinName', 'it')
			expect(faultsOf(read)).toEqual([])
		}
	})
})
