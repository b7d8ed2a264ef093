/** Every kind of document as real pages, read back with an independent reader. */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, it } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { assess } from '../../shared/engine/assess.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import {
	type KindInput,
	type KindName,
	kindNames,
	kinds,
} from '../../shared/engine/report/kinds.ts'
import { type Decisions, noDecisions } from '../../shared/engine/visit/decisions.ts'
import type { Visit } from '../../shared/engine/visit/visit.ts'
import { clinic, json, read } from '../demo.ts'

const on = '2027-03-01'
const names = ['visit-adolescent.json', 'visit-adult.json']
/** The demo visit with the heel widths that a true-size page needs. */
const measured = (name: string): Visit => {
	const raw = json(name)
	return read({
		...raw,
		feet: {
			...raw.feet,
			left: { ...raw.feet.left, heelWidthMm: 62 },
			right: { ...raw.feet.right, heelWidthMm: 63 },
		},
	})
}
const plan = {
	sessions: Array.from({ length: 40 }, (_, at) => ({
		date: new Date(Date.UTC(2027, 2, 2 + at * 3)).toISOString().slice(0, 10),
		start: '18:00',
		kind: at % 3 === 2 ? ('match' as const) : ('training' as const),
		surface: 'natural-firm',
		...(at % 7 === 6 ? {} : { pair: at % 2 ? 'p1' : 'p2' }),
	})),
	pairs: [
		{ id: 'p1', name: 'match boots', sole: 'firm-ground', replaceBy: '2027-04-10' },
		{ id: 'p2', name: 'trainers', sole: 'road' },
	],
}
const decisions: Decisions = {
	...noDecisions,
	heelRaiseMm: { left: 4, right: 4 },
	reviewDate: '2027-05-05',
	consentNoted: true,
}
const inputOf = (visit: Visit, kind: KindName, more: Partial<KindInput> = {}): KindInput => ({
	visit,
	assessment: assess(visit),
	decisions,
	clinic,
	signedAt: '2027-03-01T09:00:00.000Z',
	draft: false,
	on,
	plan,
	consents: [
		{
			id: 'C-7',
			purpose: kind === 'coach' ? 'coach' : 'squad-club',
			decision: 'permit',
			given: '2027-01-20',
		},
	],
	...more,
})
interface Item {
	str: string
	x: number
	y: number
	width: number
	size: number
}
interface Page {
	items: Item[]
	width: number
	height: number
}
async function open(bytes: Uint8Array, password?: string) {
	return getDocument({
		data: new Uint8Array(bytes),
		useSystemFonts: false,
		...(password === undefined ? {} : { password }),
	}).promise
}
async function pagesOf(bytes: Uint8Array): Promise<Page[]> {
	const pdf = await open(bytes)
	const pages: Page[] = []
	for (let number = 1; number <= pdf.numPages; number++) {
		const page = await pdf.getPage(number)
		const [, , width = 0, height = 0] = page.view
		pages.push({
			width,
			height,
			items: (await page.getTextContent()).items.flatMap((item) =>
				'str' in item && item.str.trim()
					? [
							{
								str: item.str,
								x: item.transform[4] as number,
								y: item.transform[5] as number,
								width: item.width,
								size: Math.hypot(item.transform[2] as number, item.transform[3] as number),
							},
						]
					: [],
			),
		})
	}
	return pages
}
const words = (pages: Page[]) =>
	pages
		.flatMap((page) => page.items)
		.map((item) => item.str)
		.join(' ')
		.replace(/\s+/g, ' ')
/** Words without spaces: a line may break anywhere. */
const tight = (text: string) => text.replace(/\s+/g, '')
/** The sentences of a document's prose, which must be read back once each and in order. */
const prose = (document: LwDocument): string[] =>
	document.blocks.flatMap((block) =>
		block.kind === 'heading' || (block.kind === 'text' && block.tone !== 'small')
			? [block.text]
			: [],
	)
function inside(pages: Page[], edge: number) {
	for (const page of pages)
		for (const item of page.items) {
			expect(item.x, item.str).toBeGreaterThanOrEqual(edge)
			expect(item.x + item.width, item.str).toBeLessThanOrEqual(page.width - edge)
			expect(item.y, item.str).toBeGreaterThan(10)
			expect(item.y, item.str).toBeLessThan(page.height - 10)
		}
}
/** The page's foot begins here, in points from its lower edge. */
const footEdge = 62
/** Headings that stand alone at the foot of a page, away from what they head. */
function orphans(pages: Page[], document: LwDocument): string[] {
	const headings = new Set([
		...document.blocks.flatMap((block) => (block.kind === 'heading' ? [tight(block.text)] : [])),
		'Wherethiscomesfrom',
	])
	return pages.slice(0, -1).flatMap(({ items }) => {
		const body = items.filter((item) => item.y > footEdge)
		const lowest = Math.min(...body.map((item) => item.y))
		const line = tight(
			body
				.filter((item) => Math.abs(item.y - lowest) < 1)
				.map((item) => item.str)
				.join(''),
		)
		return headings.has(line) ? [line] : []
	})
}
/**
 * Lists of a few short lines that are torn over two pages, away from their heading or from each
 * other.
 */
function torn(pages: Page[], document: LwDocument): string[] {
	const texts = pages.map((page) => tight(words([page])))
	return document.blocks.flatMap((block, at) => {
		if (block.kind !== 'list' || block.items.length > 6 || block.items.join('').length >= 600)
			return []
		const heading = document.blocks.slice(0, at).findLast((one) => one.kind === 'heading')
		const all = [
			...(heading?.kind === 'heading' &&
			document.blocks
				.slice(document.blocks.indexOf(heading) + 1, at)
				.every((one) => one.kind === 'text' && one.text.length < 200)
				? [heading.text]
				: []),
			...block.items,
		].map(tight)
		return texts.some((text) => all.every((one) => text.includes(one)))
			? []
			: [block.items.join(' / ')]
	})
}

describe('every kind as pages', () => {
	for (const name of names)
		it.each(kindNames)(
			`%s of ${name} reads back whole, in order, inside the margins`,
			async (kind) => {
				const visit = measured(name)
				const document = kinds[kind].compose(inputOf(visit, kind))
				const pages = await pagesOf(await renderPdf(document))
				const text = tight(words(pages))
				let from = 0
				for (const sentence of prose(document)) {
					const at = text.indexOf(tight(sentence), from)
					expect(at, sentence).toBeGreaterThanOrEqual(0)
					from = at + 1
				}
				for (const sentence of prose(document).filter((one) => one.length > 60))
					expect(text.split(tight(sentence)), sentence).toHaveLength(2)
				expect(words(pages)).toContain(document.title)
				expect(words(pages)).not.toMatch(/undefined|NaN|\bnull\b|\[object|\{[a-z]+\}/)
				inside(pages, kind === 'season-chart' ? 34 : kind === 'insert-order' ? 28 : 50)
				expect(orphans(pages, document)).toEqual([])
				expect(torn(pages, document)).toEqual([])
			},
		)
	const folder = new URL('../engine/pictures/', import.meta.url)
	const pictures = readdirSync(folder).filter((name) => name.endsWith('.json'))
	it('has twelve clinical pictures', () => expect(pictures).toHaveLength(12))
	it.each(pictures)(
		'the clinical picture %s prints in every kind that a single visit needs',
		async (name) => {
			const visit = read(JSON.parse(readFileSync(new URL(name, folder), 'utf8')))
			for (const kind of ['player', 'guardian', 'referral', 'insert-order'] as const) {
				const document = kinds[kind].compose(inputOf(visit, kind))
				const pages = await pagesOf(await renderPdf(document))
				const text = tight(words(pages))
				for (const sentence of prose(document))
					expect(text, `${kind}: ${sentence}`).toContain(tight(sentence))
				expect(words(pages), kind).not.toMatch(/undefined|NaN|\bnull\b|\[object|\{[a-z]+\}/)
				inside(pages, kind === 'insert-order' ? 28 : 50)
				expect(orphans(pages, document), kind).toEqual([])
				expect(torn(pages, document), kind).toEqual([])
			}
		},
	)
	it.each(names)('holds guardian and referral on one page each: %s', async (name) => {
		for (const kind of ['guardian', 'referral'] as const)
			expect(
				await pagesOf(await renderPdf(kinds[kind].compose(inputOf(measured(name), kind)))),
				kind,
			).toHaveLength(1)
	})
	it('keeps the player report of the adolescent demo to four pages', async () => {
		expect(
			(
				await pagesOf(
					await renderPdf(kinds.player.compose(inputOf(read(json(names[0]!)), 'player'))),
				)
			).length,
		).toBeLessThanOrEqual(4)
	})
	it.each(['A4', 'A3'] as const)('prints nothing on the %s chart under 14 pt', async (paper) => {
		const pages = await pagesOf(
			await renderPdf(
				kinds['season-chart'].compose(inputOf(measured(names[0]!), 'season-chart', { paper })),
			),
		)
		expect(pages[0]!.width).toBeCloseTo(paper === 'A4' ? 841.89 : 1190.55, 1)
		// the contact line of the letterhead belongs to the wall as well
		for (const page of pages)
			for (const item of page.items) expect(item.size, item.str).toBeGreaterThanOrEqual(13.99)
		expect(words(pages)).toMatch(/new A/)
	})
	it('prints on Letter where the clinic asks for it', async () => {
		const pages = await pagesOf(
			await renderPdf(
				kinds.player.compose(
					inputOf(measured(names[1]!), 'player', { clinic: { ...clinic, paper: 'Letter' } }),
				),
			),
		)
		expect([pages[0]!.width, pages[0]!.height]).toEqual([612, 792])
		inside(pages, 50)
	})
	it.each(['player', 'insert-order', 'season-chart', 'squad'] as const)(
		'gives the same bytes for the same input: %s',
		async (kind) => {
			const digest = async () =>
				createHash('sha256')
					.update(await renderPdf(kinds[kind].compose(inputOf(measured(names[0]!), kind))))
					.digest('hex')
			expect(await digest()).toBe(await digest())
		},
	)
	it('holds 200 squad rows, very long names and very long lists', async () => {
		const visit = read(json(names[0]!))
		const members = Array.from({ length: 199 }, (_, at) => ({
			visit: {
				...visit,
				player: {
					...visit.player,
					givenName: `Player${at}`,
					familyName:
						at === 7 ? 'Featherstonehaughhohenbrunnachterbergfeatherstonehaugh' : 'Of The Squad',
				},
			},
			assessment: assess(visit),
			decisions: noDecisions,
		}))
		const pages = await pagesOf(
			await renderPdf(kinds.squad.compose(inputOf(visit, 'squad', { members }))),
		)
		const text = words(pages)
		for (const number of [0, 99, 198]) expect(text).toMatch(new RegExp(`Player${number}\\b`))
		inside(pages, 50)
		const long: Decisions = {
			...decisions,
			lines: Array.from({ length: 120 }, (_, at) => ({
				findingId: `own.${at}`,
				choice: 'add' as const,
				says: `Line ${at}: ${'a longer sentence of the clinician '.repeat(8)}end.`,
			})),
			warningSigns: Array.from({ length: 12 }, (_, at) => `sign ${at} ${'word '.repeat(30)}`),
		}
		const report = await pagesOf(
			await renderPdf(kinds.player.compose(inputOf(visit, 'player', { decisions: long }))),
		)
		expect(words(report)).toContain('Line 119:')
		inside(report, 50)
	})
	it('names a character that no font has in any kind of block', async () => {
		const visit = measured(names[0]!)
		const broken = {
			...visit,
			footwear: visit.footwear!.map((pair) => ({ ...pair, name: '靴' })),
			player: { ...visit.player, club: 'Ελλάς Đội bóng Спартанец' },
		}
		await expect(
			renderPdf(kinds['insert-order'].compose(inputOf(broken, 'insert-order'))),
		).rejects.toThrow(/靴 \(U\+9774\)/)
		const fine = words(
			await pagesOf(
				await renderPdf(
					kinds.player.compose(inputOf({ ...broken, footwear: visit.footwear }, 'player')),
				),
			),
		)
		expect(fine).toContain('Ελλάς Đội bóng Спартанец')
	})
})

describe('the file itself', () => {
	it('has a title, a language and bookmarks, and claims no tags', async () => {
		const document = kinds.player.compose(inputOf(read(json(names[0]!)), 'player'))
		const pdf = await open(await renderPdf(document))
		const { info } = await pdf.getMetadata()
		expect(info).toMatchObject({ Title: document.title, Language: 'en' })
		const [root] = (await pdf.getOutline()) ?? []
		expect(root?.title).toBe(document.title)
		expect(root?.items.map((item: { title: string }) => item.title)).toEqual([
			...document.blocks.flatMap((block) => (block.kind === 'heading' ? [block.text] : [])),
			'Where this comes from',
		])
		expect(await pdf.getMarkInfo()).toBeNull()
	})
	it('prints the insert at true size: the control bar measures 100 mm', async () => {
		const document = kinds['insert-order'].compose(inputOf(measured(names[1]!), 'insert-order'))
		const figures = document.blocks.filter((block) => block.kind === 'true-size')
		expect(figures.length).toBeGreaterThan(0)
		const pdf = await open(await renderPdf(document))
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
		const document = kinds.guardian.compose(inputOf(read(json(names[0]!)), 'guardian'))
		const bytes = await renderPdf(document, { password: 'harbour-27' })
		await expect(open(bytes)).rejects.toThrow(/password/i)
		await expect(open(bytes, 'wrong-word')).rejects.toThrow(/password/i)
		const pdf = await open(bytes, 'harbour-27')
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
				await renderPdf(kinds.guardian.compose(inputOf(read(json(names[0]!)), 'guardian')), {
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
