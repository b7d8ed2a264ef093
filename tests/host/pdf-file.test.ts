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
import { markedPages } from './page-marks.ts'
import type { Spot } from './page-paths.ts'
import { openPdf } from './read-pages.ts'

const mm = (points: number): number => (points * 25.4) / 72
/** From one spot of an outline to the one that is furthest from it, mm. */
const furthestMm = (spots: readonly Spot[]): number =>
	mm(
		Math.max(...spots.flatMap(([x, y]) => spots.map(([toX, toY]) => Math.hypot(toX - x, toY - y)))),
	)
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
	it.each([
		['both feet side by side', { heelToToeMm: 230, ballWidthMm: 86 }],
		['both feet heel to head', { heelToToeMm: 250, ballWidthMm: 95 }],
		['a turned foot a sheet', { heelToToeMm: 280, ballWidthMm: 108 }],
		['larger paper', { heelToToeMm: 320, ballWidthMm: 112 }],
	])('prints the insert at 1:1, its bar 100 mm and its sentence whole: %s', async (_, foot) => {
		const visit = measured(demoNames[1]!)
		const { left, right } = visit.feet!
		const measures = { ...foot, heelToBallMm: Math.round(0.72 * foot.heelToToeMm) }
		const feet = { left: { ...left, ...measures }, right: { ...right, ...measures } }
		const input = inputOf({ ...visit, feet }, 'insert-order', { recordNumber: 'LW-00417' })
		const raise = { element: 'heel-raise', choice: 'add' as const, value: 4, why: 'for both' }
		const insert = { left: [raise], right: [raise] }
		const document = kinds['insert-order'].compose({
			...input,
			decisions: { ...input.decisions, insert },
		})
		const figures = document.blocks.filter((block) => block.kind === 'true-size')
		const pages = (await markedPages(await renderPdf(document))).slice(-figures.length)
		let longestMm: number[] = []
		for (const { marks } of pages) {
			const lines = marks.filter(({ kind }) => kind === 'line')
			const bars = lines.flatMap(({ outlines }) =>
				outlines
					.filter((spots) => spots.length === 2)
					.map(([from, to]) => mm(Math.hypot(to![0] - from![0], to![1] - from![1])))
					.filter((length) => Math.abs(length - 100) < 1),
			)
			expect(bars).toEqual([expect.closeTo(100, 2)])
			// the outline of each foot, however it is turned, from the heel to the furthest toe
			longestMm = [
				...longestMm,
				...lines
					.flatMap(({ outlines }) => outlines)
					.filter((spots) => spots.length > 30)
					.map(furthestMm)
					.filter((length) => length > 200),
			]
			const words = marks.flatMap((mark) => (mark.kind === 'text' ? [mark.text] : [])).join('')
			expect(words).toMatch(/This bar must measure 100 mm.*100 % \(no fitting to the page\)/)
			for (const said of ['insert of Zoë', 'born 8 November', 'Record LW-00417', 'no tracing'])
				expect(words).toContain(said)
		}
		expect(longestMm).toHaveLength(2)
		// the toes lie somewhat beside the line of the heel
		for (const length of longestMm) {
			expect(length).toBeGreaterThanOrEqual(foot.heelToToeMm - 0.1)
			expect(length).toBeLessThan(1.03 * foot.heelToToeMm)
		}
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
