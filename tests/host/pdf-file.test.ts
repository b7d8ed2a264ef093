/** The PDF as a file: its title, its true size, its protection. */
import { execFileSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { blocksIn } from '../../shared/engine/report/document.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { json, read } from '../demo.ts'
import { demoNames, inputOf, measured } from './kind-input.ts'
import { openPdf } from './read-pages.ts'

describe('the file itself', () => {
	it('has a title, a language and bookmarks, and claims the structure that it has', async () => {
		const document = kinds.player.compose(inputOf(read(json(demoNames[0]!)), 'player'))
		const pdf = await openPdf(await renderPdf(document))
		const { info } = await pdf.getMetadata()
		expect(info).toMatchObject({ Title: document.title, Language: 'en' })
		const [root] = (await pdf.getOutline()) ?? []
		expect(root?.title).toBe(document.title)
		expect(root?.items.map((item: { title: string }) => item.title)).toEqual([
			...blocksIn(document.blocks).flatMap((block) =>
				block.kind === 'heading' ? [block.text] : [],
			),
		])
		expect(await pdf.getMarkInfo()).toMatchObject({ Marked: true })
	})
	it('prints the insert at true size: the control bar measures 100 mm', async () => {
		const document = kinds['insert-order'].compose(inputOf(measured(demoNames[1]!), 'insert-order'))
		const figures = document.blocks.filter((block) => block.kind === 'true-size')
		expect(figures.length).toBeGreaterThan(0)
		const pdf = await openPdf(await renderPdf(document))
		let bars = 0
		for (let number = 1; number <= pdf.numPages; number++) {
			const page = await pdf.getPage(number)
			const text = (await page.getTextContent()).items.flatMap((item) =>
				'str' in item ? [item] : [],
			)
			const caption = text.filter((item) => /must measure|from above/.test(item.str))
			if (caption.length === 0) continue
			bars++
			// a text set at 3 mm is 3 mm high on the page: nothing was scaled
			expect(
				text
					.filter((item) => /must measure/.test(item.str))
					.map((item) => Math.hypot(item.transform[2] as number, item.transform[3] as number)),
			).toEqual([expect.closeTo((3 * 72) / 25.4, 1)])
		}
		expect(bars).toBe(figures.length)
	})
	it('opens a protected copy by its password only, printing allowed', async () => {
		const document = kinds.guardian.compose(inputOf(read(json(demoNames[0]!)), 'guardian'))
		const bytes = await renderPdf(document, { password: 'harbour-27' })
		await expect(openPdf(bytes)).rejects.toThrow(/password/i)
		await expect(openPdf(bytes, 'wrong-word')).rejects.toThrow(/password/i)
		const pdf = await openPdf(bytes, 'harbour-27')
		const allowed = await pdf.getPermissions()
		// PDF permission bits: 4 printing, 512 reading aloud, 2048 printing in full quality; 8 changing
		for (const bit of [4, 512, 2048]) expect(allowed).toContain(bit)
		expect(allowed).not.toContain(8)
		await expect(renderPdf(document, { password: 'short' })).rejects.toThrow(/at least 8/)
	})
	it('encrypts that copy with AES-256, by qpdf where it is installed', async ({ skip }) => {
		const folder = mkdtempSync(join(tmpdir(), 'lastwright-pdf-'))
		try {
			try {
				execFileSync('qpdf', ['--version'], { stdio: 'ignore' })
			} catch {
				skip('qpdf is not installed')
			}
			const file = join(folder, 'copy.pdf')
			writeFileSync(
				file,
				await renderPdf(kinds.guardian.compose(inputOf(read(json(demoNames[0]!)), 'guardian')), {
					password: 'harbour-27',
				}),
			)
			expect(
				execFileSync('qpdf', ['--password=harbour-27', '--show-encryption', file], {
					encoding: 'utf8',
				}),
			).toMatch(/AESv3[\s\S]*AESv3/)
		} finally {
			rmSync(folder, { recursive: true, force: true })
		}
	})
})
