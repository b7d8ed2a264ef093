/**
 * One plan: documents, season, screens and lists read the settled plan, and no room's own wish of a
 * size, a raise, a pair or a feature.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const root = fileURLToPath(new URL('../../', import.meta.url))
/** Folders whose files read the plan. */
const readers = [
	'shared/engine/report',
	'shared/engine/season',
	'electron/services/squad',
	'electron/services/season',
	'electron/solver',
	'renderer',
]
/** Keys that stay for outside callers, and for records of before. */
const wishes: readonly (readonly [key: string, reads: RegExp])[] = [
	['footwear.target', /footwear\??\.target\b|\{[^{}]*\btarget\b[^{}]*\}\s*=[^=>][^\n]*footwear\b/],
	[
		'footwear.current',
		/footwear\??\.current\b|\{[^{}]*\bcurrent\b[^{}]*\}\s*=[^=>][^\n]*footwear\b/,
	],
	['heelRaiseMm', /\bheelRaiseMm\b/],
]
/** What reads such a key on purpose, and why; a line that no longer stands in its file fails. */
const allowed: readonly (readonly [line: string, why: string])[] = [
	[
		'shared/engine/report/signing.ts: heelRaiseMm',
		'a height that a draft of before was given needs its reason still',
	],
	[
		'renderer/screens/assessment/decide/answering.ts: heelRaiseMm',
		'an answer takes the place of a height that an earlier version kept by itself',
	],
	[
		'renderer/screens/assessment/ownedInShort.ts: footwear.current',
		'the toe room that was measured; the verdict is that of the plan',
	],
]
const filesIn = (folder: string): string[] =>
	readdirSync(`${root}${folder}`, { recursive: true, encoding: 'utf8' })
		.filter((name) => /\.tsx?$/.test(name))
		.map((name) => `${folder}/${name}`)
const bare = (code: string): string => code.replace(/\/\*[\s\S]*?\*\/|\/\/.*$/gm, '')
const readsIn = (code: string): string[] =>
	wishes.flatMap(([key, reads]) => (reads.test(bare(code)) ? [key] : []))

describe('the reader of a room’s own wish', () => {
	it.each([
		['const inside = assessment.footwear.target.seek', ['footwear.target']],
		['const { target } = input.assessment.footwear', ['footwear.target']],
		['for (const pair of footwear?.current ?? []) go(pair)', ['footwear.current']],
		['const raise = decisions.heelRaiseMm', ['heelRaiseMm']],
		['const { heelRaiseMm } = assessment.ankle', ['heelRaiseMm']],
	])('is found: %s', (code, keys) => expect(readsIn(code)).toEqual(keys))
	it.each([
		'const { pairs } = planOf(input)',
		'// footwear.target is a wish of the room',
		'const { modifications = [] } = input.assessment.footwear',
		'const { current } = useDraft()',
	])('is told from others: %s', (code) => expect(readsIn(code)).toEqual([]))
	it('is no document, no season, no list and no screen', () => {
		const files = readers.flatMap(filesIn)
		expect(files.length).toBeGreaterThan(150)
		const found = files.flatMap((file) =>
			readsIn(readFileSync(`${root}${file}`, 'utf8')).map((key) => `${file}: ${key}`),
		)
		expect(found.toSorted()).toEqual(allowed.map(([line]) => line).toSorted())
	})
})
