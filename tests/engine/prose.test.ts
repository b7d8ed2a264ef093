/**
 * No code decides by a sentence: it goes by codes, so that words may change and nothing else does.
 * The finder is tested first: each way of reading a sentence is planted and must be named.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { proseAssertions, proseReads } from '../prose.ts'

const planted: readonly (readonly [what: string, code: string])[] = [
	['a pattern', 'export const is = (finding) => /ankle/.test(finding.says)'],
	['a pattern on what was taken out', 'export const is = ({ says }) => /ankle/.exec(says)'],
	['a beginning', "export const is = (error) => error.message.startsWith('Not')"],
	['a part, after a change of letters', "x = finding.says.toLowerCase().includes('ankle')"],
	['a comparison', "x = finding.says === 'The ankle is stiff.'"],
	['a comparison the other way round', "x = 'Stiff.' !== finding?.says"],
	['a replacement', "x = (item.says ?? '').replace(/\\.$/, '')"],
	['one of a list', 'x = known.includes(finding.says)'],
	['one of a set', 'x = new Set(known).has(finding.says)'],
	['a switch', "switch (finding.says) { case 'a': break }"],
	['a name of its own', "const told = finding.says; if (told.includes('ankle')) go()"],
	['what was decided about, in words', "x = line.about === 'Stiff.'"],
	['the title of a working', 'x = working.title.match(/length/)'],
	['the source of a basis', "x = finding.basis.source.includes('practice')"],
	['a rule by its type', "const f = ({ rule }: Basis) => rule === 'cut-off'"],
	['a number by its name', "x = finding.because.some((because) => because.measure === 'lunge')"],
	[
		'words made a moment before',
		"import { dayInWords } from '../plain/days.ts'\nx = dayInWords(date).replace(/ \\d+$/, '')",
	],
	[
		'words of the catalogue',
		"import { spokenTo } from '../words/statement.ts'\nx = spokenTo('player', said) === 'Stop.'",
	],
]
const innocent: readonly (readonly [what: string, code: string])[] = [
	['a code', "x = finding.code === 'ankle.restricted'"],
	['whether something is said', "x = says !== '' && finding.says !== undefined"],
	['what a person typed', "x = session.title.toLowerCase().includes('match')"],
	['where a list came from', 'x = session.source === source'],
	['a message between threads', "x = message.type === 'done'"],
	['a sentence shown', "x = [finding.says, error.message].join(' ')"],
	['a statement', "import { state } from './words/statement.ts'\nx = list.includes(state('a'))"],
]
const readIn = (code: string) => proseReads('planted.ts', code)

describe('the finder of code that reads a sentence', () => {
	it.each(planted)('names %s', (_, code) =>
		expect(readIn(code).map(({ line }) => line)).toEqual([code.split('\n').length]),
	)
	it.each(innocent)('lets %s be', (_, code) => expect(readIn(code)).toEqual([]))
})

/** What reads words on purpose, and why; a line that no longer stands in its file fails. */
const allowed: readonly (readonly [file: string, code: string, why: string])[] = [
	[
		'electron/calendar/csv-row.ts',
		'termWords(surface).toLowerCase() === value',
		'a list from outside may name a surface in the words of the program',
	],
	[
		'electron/command/args.ts',
		"error.message.split('. ')",
		'the first sentence of Node on an option, shown and not decided by',
	],
	[
		'electron/command/files.ts',
		"error.message.replace(/\\s+/g, ' ')",
		'the words of Node on a text that is no JSON, shown on one line',
	],
	[
		'shared/engine/visit/decisions.ts',
		'kept.says !== now.says',
		'a decision from before contents were kept tells only the words that it was about',
	],
	[
		'shared/engine/visit/decisions.ts',
		'own !== about?.trim()',
		'words typed by a person are their own unless they are the suggestion again',
	],
	[
		'electron/store/alarms.ts',
		'said.has(says)',
		'an alarm on record has no name but its words: the same one is not put twice',
	],
	[
		'electron/store/keyed-store.ts',
		'settled.has(says)',
		'the alarms that were looked into are those on record, word for word',
	],
	[
		'renderer/screens/records/DecideLine.tsx',
		'choice.says === says',
		'a person picks a choice by its words: the list of the form knows nothing else',
	],
]
const root = fileURLToPath(new URL('../..', import.meta.url))
const isCode = (file: string): boolean => /\.tsx?$/.test(file) && !file.endsWith('.table.ts')
/** Making words is the one thing that these do. */
const makesWords = (file: string): boolean => file.startsWith('shared/engine/words/')
const files = ['shared', 'electron', 'renderer']
	.flatMap((part) =>
		readdirSync(join(root, part), { recursive: true, encoding: 'utf8' }).map(
			(file) => `${part}/${file}`,
		),
	)
	.filter((file) => isCode(file) && !makesWords(file))
	.sort()
const found = files.flatMap((file) =>
	proseReads(file, readFileSync(join(root, file), 'utf8')).map((read) => ({ file, ...read })),
)

describe('the code of the program', () => {
	it('reads no sentence, but where it is allowed', () => {
		const other = found.filter(
			({ file, code }) => !allowed.some(([known, text]) => known === file && text === code),
		)
		expect(other.map(({ file, line, code }) => `${file}:${line} ${code}`)).toEqual([])
	})
	it.each(allowed)('%s reads %s, where that is allowed', (file, code) =>
		expect(found.filter((read) => read.file === file && read.code === code)).not.toEqual([]),
	)
})

describe('the finder of tests that read a sentence', () => {
	const assertedIn = (code: string) => proseAssertions('planted.test.ts', code).length
	it.each([
		'expect(finding.says).toMatch(/ankle/)',
		"expect(finding.says).not.toContain('ankle')",
		"expect(problem?.message ?? '').toBe('Too small.')",
		"import { spokenTo } from './words/statement.ts'\nexpect(spokenTo('coach', a)).toBe('Rest.')",
	])('names %s', (code) => expect(assertedIn(code)).toBe(1))
	it.each([
		"expect(finding.code).toBe('ankle.restricted')",
		'expect(finding.says).not.toMatch(/undefined|NaN/)',
		'expect(finding.says).toMatch(/[.]$/)',
		'expect(finding.says).toBe(other.says)',
		"expect(finding.says).not.toBe('')",
	])('lets %s be', (code) => expect(assertedIn(code)).toBe(0))
})

/** A test whose subject is words is called after them. */
const isOfWords = (file: string): boolean => file.endsWith('-words.test.ts')
/** Others that read words, and why; every other goes by codes and what they are filled in with. */
const ofWords: readonly (readonly [file: string, why: string])[] = [
	['tests/engine/days.test.ts', 'days are put in words'],
	['tests/engine/measures.test.ts', 'how a reading is written'],
	['tests/engine/readers.property.test.ts', 'which private topics a reader is told of, by name'],
	['tests/engine/languages.test.ts', 'languages are read by name and by tag'],
	['tests/engine/conditions.test.ts', 'what was typed reaches some readers only'],
]
const testFiles = ['tests/engine', 'tests/published'].flatMap((part) =>
	readdirSync(join(root, part), { recursive: true, encoding: 'utf8' })
		.map((file) => `${part}/${file}`)
		.filter(isCode),
)
const asserted = testFiles.flatMap((file) =>
	proseAssertions(file, readFileSync(join(root, file), 'utf8')).map((read) => ({ file, ...read })),
)
describe('the tests', () => {
	it('hold no sentence against words of their own, but where words are the subject', () =>
		expect(
			asserted
				.filter(({ file }) => !isOfWords(file) && !ofWords.some(([known]) => known === file))
				.map(({ file, line, code }) => `${file}:${line} ${code}`),
		).toEqual([]))
	it.each(ofWords)('%s still does: %s', (file) =>
		expect(asserted.filter((read) => read.file === file)).not.toEqual([]),
	)
})
