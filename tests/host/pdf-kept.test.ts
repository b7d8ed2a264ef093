/** Pages that exist: put under a password without being drawn again, and read as text. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { protectPdf, textOfPdf } from '../../electron/pdf/kept.ts'
import type { ReportValue } from '../../shared/desk/visits/kept-pages.ts'
import { goldenPlayers, pagesIn } from './golden/golden.ts'
import { isInstalled } from './other-programs.ts'
import { openPdf, pagesOf, tight } from './read-pages.ts'

const password = 'harbour-27 Ørland'
const pages = goldenPlayers.flatMap(({ records }) =>
	records
		.filter(({ kind }) => kind === 'report')
		.flatMap(({ value }) => pagesIn(value as ReportValue))
		.map(({ base64 }) => Buffer.from(base64, 'base64')),
)
const [one = pages[0]!] = pages
let here = ''
beforeAll(() => {
	here = mkdtempSync(join(tmpdir(), 'lastwright-pdf-'))
})
afterAll(() => rmSync(here, { recursive: true, force: true }))
describe('a kept PDF under a password', () => {
	it('opens by the password only; printing is allowed and changing is not', async () => {
		const copy = await protectPdf(one, password)
		await expect(openPdf(copy)).rejects.toThrow(/password/i)
		await expect(openPdf(copy, 'another-word')).rejects.toThrow(/password/i)
		const allowed = await (await openPdf(copy, password)).getPermissions()
		for (const bit of [4, 512, 2048]) expect(allowed).toContain(bit)
		expect(allowed).not.toContain(8)
	})
	it('keeps title, language and every word of each page', async () => {
		for (const page of pages) {
			const copy = await protectPdf(page, password)
			expect(await pagesOf(copy, password)).toEqual(await pagesOf(page))
			const info = async (bytes: Uint8Array, word?: string) =>
				(await (await openPdf(bytes, word)).getMetadata()).info
			expect(await info(copy, password)).toMatchObject({
				Title: ((await info(page)) as { Title: string }).Title,
				Language: 'en',
			})
		}
	})
	it('is of revision 6, AES-256, and the same to the pixel once it is opened', async ({ skip }) => {
		if (!isInstalled('qpdf', 'pdftoppm')) skip('qpdf or pdftoppm is not installed')
		const file = (name: string) => join(here, name)
		const picture = (pdf: string) =>
			execFileSync('pdftoppm', ['-r', '60', file(pdf)], { maxBuffer: 1 << 28 })
		for (const page of pages) {
			writeFileSync(file('kept.pdf'), page)
			writeFileSync(file('copy.pdf'), await protectPdf(page, password))
			const opens = `--password=${password}`
			expect(
				execFileSync('qpdf', [opens, '--show-encryption', file('copy.pdf')], { encoding: 'utf8' }),
			).toMatch(
				/^R = 6\n[\s\S]*stream encryption method: AESv3[\s\S]*file encryption method: AESv3/,
			)
			execFileSync('qpdf', [opens, '--decrypt', file('copy.pdf'), file('opened.pdf')])
			expect(picture('opened.pdf').equals(picture('kept.pdf'))).toBe(true)
			expect(readFileSync(file('kept.pdf')).equals(page)).toBe(true)
		}
	})
	it('has keys of its own in each copy', async () => {
		const [first, second] = [await protectPdf(one, password), await protectPdf(one, password)]
		expect(Buffer.from(first).equals(second)).toBe(false)
	})
	it('is refused in words with a short password, and for what is no PDF', async () => {
		await expect(protectPdf(one, 'short')).rejects.toThrow(/has 5 characters.*at least 8/)
		for (const bytes of ['', 'no PDF', '%PDF-1.7 cut', one.subarray(0, 900)])
			await expect(protectPdf(Buffer.from(bytes), password)).rejects.toMatchObject({
				name: 'UnreadablePdf',
			})
	})
})
describe('the text of a kept PDF', () => {
	it('has every word of each page, in paragraphs', async () => {
		for (const page of pages) {
			const text = await textOfPdf(page)
			const read = await pagesOf(page)
			expect(text).toHaveLength(read.length)
			for (const [at, { items }] of read.entries()) {
				const words = tight(text[at]!.join(''))
				for (const { str } of items) expect(words).toContain(tight(str))
				expect(text[at]!.length).toBeGreaterThan(1)
			}
		}
	})
	it('is refused in words for what is no PDF', async () => {
		await expect(textOfPdf(Buffer.from('no PDF'))).rejects.toMatchObject({ name: 'UnreadablePdf' })
	})
})
