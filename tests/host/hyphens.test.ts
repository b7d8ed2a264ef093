/** A word wider than its column is divided where English divides it; nothing leaves its page. */
import { expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { pagesOf } from './read-pages.ts'

const long = 'Superextraordinarilyoverdimensionedmatchboots'
const address = `https://example.org/${'a'.repeat(120)}`
const document: LwDocument = {
	title: 'Long words',
	kind: 'player',
	language: 'en',
	draft: false,
	letterhead: { clinicName: 'Clinic', address: [], colour: '#1f5f5b' },
	subject: [['Player', `Anna ${long} ${long}`]],
	blocks: [
		{
			kind: 'text',
			text: `An ordinary sentence of words that stand as they are: ${'boots '.repeat(30)}`,
		},
		{ kind: 'table', caption: 'A', head: ['', ''], rows: [[long, address]], widths: [90, '*'] },
		{ kind: 'table', caption: 'B', head: ['', ''], rows: [[long.repeat(3), 'keep']] },
		{ kind: 'facts', rows: [{ label: 'Uncharacteristically', text: long }] },
	],
	notes: [],
	footer: 'foot',
	createdAt: '2027-01-20T12:00:00.000Z',
}
it('divides with a hyphen, keeps inside the page, and loses no letter', async () => {
	const pages = await pagesOf(await renderPdf(document))
	const items = pages.flatMap(({ items }) => items)
	for (const { str, x, width } of items)
		expect(x + width, str).toBeLessThanOrEqual((pages[0]?.width ?? 0) - 50)
	const words = items.map(({ str }) => str.trim())
	expect(words.filter((word) => word.endsWith('-')).length).toBeGreaterThan(4)
	expect(words.some((word) => /^Uncharacter\w*-$/.test(word))).toBe(true)
	const letters = words.join('').replaceAll('-', '').replace(/\s+/g, '')
	for (const text of [long, address, long.repeat(3)])
		expect(letters).toContain(text.replaceAll('-', ''))
	// what fits stands undivided
	expect(words.some((word) => /^boo-|ordi-/.test(word))).toBe(false)
})
