/**
 * Paper: a printed list is a page with a heading, the day, the head of the table on each page, and
 * nothing to press.
 */
import { mkdirSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { dayInWords } from '../../shared/engine/plain/days.ts'
import { hostCall, still } from './drive.ts'
import { startHost } from './host.ts'
import { put, tour } from './tour.ts'

const lists: Record<
	string,
	{ heading: string; heads: readonly string[]; not: readonly string[]; leastPages: number }
> = {
	players: {
		heading: 'Players',
		heads: ['Name', 'Birth date', 'Club'],
		not: ['New player', 'Search players', 'Print this list', 'Backups and records', 'Lock'],
		leastPages: 2,
	},
	shelf: {
		heading: 'Shelf',
		heads: ['Name', 'Sole', 'Sizes'],
		not: ['Add a model', 'Retire', 'Actions', 'Find a model'],
		leastPages: 1,
	},
	'records audit': {
		heading: 'Audit trail',
		heads: ['When', 'Who', 'Outcome'],
		not: ['Check the trail', 'Show only', 'My access'],
		leastPages: 2,
	},
	outbox: {
		heading: 'Outbox',
		heads: [],
		not: ['Delivery reports', 'Mail settings'],
		leastPages: 1,
	},
	'records retention': { heading: 'Due', heads: [], not: ['My access'], leastPages: 1 },
}
async function textOfPages(pdf: Buffer): Promise<string[]> {
	const file = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
	const pages: string[] = []
	for (let at = 1; at <= file.numPages; at++)
		pages.push(
			(await (await file.getPage(at)).getTextContent()).items
				.map((item) => ('str' in item ? item.str : ''))
				.join(' ')
				.replace(/\s+/g, ' '),
		)
	return pages
}
test('a printed list is a proper page', async ({ page }) => {
	test.setTimeout(240_000)
	const out = process.env.LASTWRIGHT_SHOTS
	if (out) mkdirSync(out, { recursive: true })
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		const stops = await tour(page)
		// a list longer than one page
		const squad =
			'Number,Given name,Family name,Birth ' +
			`date,Sex\n${Array.from({ length: 60 }, (_, at) => `${at + 1},Nim${String.fromCharCode(97 + (at % 26))}${String.fromCharCode(97 + Math.floor(at / 26))},Printed,2011-0${1 + (at % 9)}-02,f`).join('\n')}`
		// of one name and one birth date, and yet not the same: said for each
		const same = Object.fromEntries(Array.from({ length: 60 }, (_, at) => [String(at + 2), 'new']))
		const list = { text: squad, team: 'Paper Rovers', day: '2027-01-21', same }
		await hostCall(page, 'squad.create', list)
		const today = await page.evaluate(() => {
			const now = new Date()
			return `${now.getFullYear()}-${String(now.getMonth() + 1).padStart(2, '0')}-${String(now.getDate()).padStart(2, '0')}`
		})
		for (const [name, want] of Object.entries(lists)) {
			await stops.find((stop) => stop.name === 'help keys')!.open(page)
			await stops.find((stop) => stop.name === name)!.open(page)
			// paper does not follow the screen into the dark
			await put(page, 'own dark')
			await still(page)
			const pdf = await page.pdf({ format: 'A4', preferCSSPageSize: true })
			if (out) writeFileSync(join(out, `print-${name.replace(' ', '-')}.pdf`), pdf)
			await put(page, 'light')
			const pages = await textOfPages(pdf)
			const all = pages.join('\n')
			expect(pages.length, `${name}: pages`).toBeGreaterThanOrEqual(want.leastPages)
			expect(pages[0], name).toContain(want.heading)
			expect(pages[0], name).toContain(`Printed ${dayInWords(today)}`)
			pages.forEach((text, at) => {
				for (const head of want.heads)
					expect(text, `${name}, page ${at + 1}: head of the table`).toContain(head)
				expect(text, `${name}: number of the page`).toContain(`Page ${at + 1} of ${pages.length}`)
			})
			for (const words of want.not) expect(all, `${name}: not on paper`).not.toContain(words)
		}
	} finally {
		await host.kill()
	}
})
