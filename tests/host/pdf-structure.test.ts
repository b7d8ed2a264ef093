/** The structure of every kind of document, for readers that speak, and for whoever copies text. */
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { blocksIn, type LwDocument } from '../../shared/engine/report/document.ts'
import { kindNames, kinds } from '../../shared/engine/report/kinds.ts'
import { demoNames, inputOf, measured } from './kind-input.ts'
import { pagesOf, tight, wordsOf } from './read-pages.ts'
import { allOf, type Element, structureOf } from './read-structure.ts'

const documents: [string, LwDocument][] = demoNames.flatMap((name) =>
	kindNames.flatMap((kind) => {
		const input = inputOf(measured(name), kind)
		if (kinds[kind].problems(input).length > 0) return []
		return [[`${kind} of ${name}`, kinds[kind].compose(input)] as [string, LwDocument]]
	}),
)
const rolesIn = (elements: readonly Element[], ...roles: string[]): Element[] =>
	elements.filter(({ role }) => roles.includes(role))
const cells = (row: Element) => rolesIn(row.inner, 'TH', 'TD').length

describe.each(documents)('%s', (_, document) => {
	const read = renderPdf(document).then(async (bytes) => ({
		bytes,
		structure: await structureOf(bytes),
	}))
	const all = read.then(({ structure }) => structure.pages.flatMap(allOf))

	it('shows no text outside a mark, and each run of the tree belongs to one element', async () => {
		const { bare, marked, owned, language } = (await read).structure
		expect(bare).toBe(0)
		expect(marked).toBeGreaterThan(0)
		expect(owned).toBe(marked)
		expect(language).toBe('en')
	})
	it('begins with its title, and has every heading in order', async () => {
		const elements = await all
		expect(rolesIn(elements, 'H1').map(({ words }) => tight(words))).toEqual([
			tight(document.title),
		])
		const headings = blocksIn(document.blocks).flatMap((block) =>
			block.kind === 'heading' ? [tight(block.text)] : [],
		)
		const told = rolesIn(elements, 'H2', 'H3').map(({ words }) => tight(words))
		expect(told.filter((words) => headings.includes(words))).toEqual(headings)
	})
	it('has every row of a table whole, under heads that say what they speak for', async () => {
		for (const table of rolesIn(await all, 'Table')) {
			const rows = rolesIn(table.inner, 'TR')
			if (rows.length === 0) continue
			expect(new Set(rows.map(cells)).size, JSON.stringify(rows)).toBe(1)
		}
		const captions = blocksIn(document.blocks).flatMap((block) =>
			block.kind === 'table' || block.kind === 'figure' ? [tight(block.caption)] : [],
		)
		const told = rolesIn(await all, 'Caption').map(({ words }) => tight(words))
		expect(told).toEqual(expect.arrayContaining(captions.filter(Boolean)))
	})
	it('says what each drawing shows', async () => {
		const drawings = blocksIn(document.blocks).flatMap((block) =>
			block.kind === 'figure' || block.kind === 'true-size' ? [block.alternative] : [],
		)
		const told = rolesIn(await all, 'Figure').map(({ alternative }) => alternative)
		expect(told).toEqual(drawings)
		expect(told.every(Boolean)).toBe(true)
	})
	it('says all that stands on the pages but what runs along their edges, and nothing twice', async () => {
		const { bytes } = await read
		const drawings = rolesIn(await all, 'Figure').flatMap(allOf)
		const spoken = (await all).filter((element) => !drawings.includes(element))
		const onPages = tight(wordsOf(await pagesOf(bytes)))
		for (const { role, words, inner } of spoken)
			if (role === 'P' && inner.length === 0) expect(words).not.toBe('')
		for (const { words } of spoken) expect(onPages).toContain(tight(words.slice(0, 30)))
		const sentences = rolesIn(spoken, 'P', 'LBody').map(({ words }) => words)
		const said = blocksIn(document.blocks).flatMap((block) =>
			block.kind === 'list' ? block.items : block.kind === 'text' ? [block.text] : [],
		)
		for (const sentence of said.filter((text) => text.trim() !== ''))
			expect(sentences.filter((words) => tight(words) === tight(sentence)).length, sentence).toBe(
				said.filter((text) => tight(text) === tight(sentence)).length,
			)
	})
})
it('the mark of a draft is decoration, and stands in no sentence', async () => {
	const [, document] = documents[0] ?? []
	const { pages } = await structureOf(await renderPdf({ ...(document as LwDocument), draft: true }))
	expect(pages.flatMap(allOf).some(({ words }) => words.includes('DRAFT'))).toBe(false)
})
const poppler = spawnSync('pdfinfo', ['-v']).error === undefined
it.skipIf(!poppler)('a second reader tells the same tree', async () => {
	const [, document] = documents[0] ?? []
	const file = join(mkdtempSync(join(tmpdir(), 'lastwright-structure-')), 'page.pdf')
	writeFileSync(file, await renderPdf(document as LwDocument))
	const told = execFileSync('pdfinfo', ['-struct', file], { encoding: 'utf8' })
	expect(execFileSync('pdfinfo', [file], { encoding: 'utf8' })).toMatch(/Tagged:\s+yes/)
	for (const part of ['H1', 'H2', 'L ', 'LI', 'Lbl', 'LBody', 'Table', 'TH', 'TD', 'Figure'])
		expect(told).toContain(part)
	expect(told).toMatch(/Scope \/Row/)
	expect(told).toMatch(/Scope \/Column/)
})
