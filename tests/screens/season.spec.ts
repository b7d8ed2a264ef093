/**
 * A season planned by keyboard in a real browser: pattern, exception, plan, pin, plan again, the
 * change in words, the chart opened.
 */
import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { AxeBuilder } from '@axe-core/playwright'
import { expect, type Page, test } from '@playwright/test'
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { hostCall } from './drive.ts'
import { startHost } from './host.ts'

const demo = (name: string) =>
	JSON.parse(readFileSync(new URL(`../../assets/demo/${name}`, import.meta.url), 'utf8'))
const planned = (page: Page) => expect(page.getByText(/^Planned:/)).toBeVisible({ timeout: 60_000 })
async function type(page: Page, form: string, field: string, text: string) {
	await page.getByRole('form', { name: form }).getByLabel(field, { exact: true }).focus()
	await page.keyboard.press('ControlOrMeta+a')
	await page.keyboard.type(text)
}
/** Picks an option of a native list by typing the beginning of its words. */
const pick = (page: Page, form: string, field: string, words: string) =>
	type(page, form, field, words)

test('a season by keyboard, from the weekly pattern to the wall chart', async ({ page }) => {
	const data = mkdtempSync(join(tmpdir(), 'lastwright-season-'))
	const faults: string[] = []
	page.on('console', (message) => {
		if (message.type() === 'error') faults.push(message.text())
	})
	page.on('pageerror', (error) => faults.push(error.message))
	const host = await startHost('--data', data)
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		await hostCall(page, 'session.setUp', {
			clinic: demo('demo.json').clinic,
			passphrase: 'seven grey herons',
		})
		const { season: _, ...visit } = demo('season-visit.json')
		const { playerId } = await hostCall<{ playerId: string }>(page, 'players.save', {
			player: visit.player,
		})
		const { draft } = await hostCall<{
			draft: { draftId: string; content: { decisions: object } }
		}>(page, 'drafts.open', { playerId, visitDate: visit.visitDate })
		await hostCall(page, 'drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, visit },
		})
		await page.evaluate((id) => {
			location.hash = `#/players/${id}`
		}, playerId)
		await page.reload()
		await page.getByRole('button', { name: 'Season', exact: true }).press('Enter')
		await expect(
			page.getByRole('heading', { level: 1, name: 'Season of Ines Calloway' }),
		).toBeVisible()

		await type(page, 'Season dates', 'Season from', '1 February 2027')
		await type(page, 'Season dates', 'Season to', '30 May 2027')
		await page.keyboard.press('Enter')
		await expect(
			page.getByText('The season runs from 1 February 2027 to 30 May 2027.'),
		).toBeVisible()

		// a missing surface is asked for in words; nothing is added
		await pick(page, 'Weekly session', 'Weekday', 'tue')
		await type(page, 'Weekly session', 'Start', '18:00')
		await page.keyboard.press('Enter')
		await expect(page.getByRole('alert').filter({ hasText: 'Surface: missing' })).toBeVisible()
		await pick(page, 'Weekly session', 'Surface', 'artificial (3')
		await page.getByRole('button', { name: 'Add weekly session' }).press('Enter')
		await expect(page.getByRole('list', { name: 'Weekly sessions' })).toContainText(
			'Tuesday 18:00, 75 min training, artificial (3G)',
		)
		for (const [weekday, kind, start] of [
			['thu', 'training', '18:00'],
			['sat', 'match', '10:30'],
		] as const) {
			await pick(page, 'Weekly session', 'Weekday', weekday)
			await type(page, 'Weekly session', 'Start', start)
			await pick(page, 'Weekly session', 'Kind', kind)
			await pick(page, 'Weekly session', 'Surface', 'natural f')
			await page.getByRole('button', { name: 'Add weekly session' }).press('Enter')
		}
		await expect(
			page.getByRole('list', { name: 'Weekly sessions' }).getByRole('listitem'),
		).toHaveCount(3)

		await pick(page, 'Exception', 'What', 'bye')
		await type(page, 'Exception', 'Exception from', '27 March 2027')
		await page.keyboard.press('Enter')
		await expect(page.getByRole('list', { name: 'Exceptions' })).toContainText(
			'Bye (match off): 27 March 2027',
		)

		const plan = page.getByRole('button', { name: 'Plan the season' })
		await plan.press('Enter')
		await planned(page)
		await expect(plan).toBeFocused()
		const grid = page.getByRole('grid', { name: 'The season' })
		const session = (name: RegExp) => grid.getByRole('button', { name })
		await expect(session(/^Saturday 27 March 2027.*bye/)).toBeVisible()
		await expect(grid.getByRole('columnheader', { name: 'Saturday', exact: true })).toBeVisible()
		await expect(grid.getByRole('rowheader', { name: 'Week of 1 February 2027' })).toBeVisible()
		await expect(page.getByText(/^Proven the best/)).toBeVisible()
		const match = session(/^Saturday 10 April 2027/)
		await expect(match).toHaveAccessibleName(
			/match 10:30, 75 minutes, natural firm, dry: pair A, firm boots/,
		)

		// walked with the arrows to the session, over days without one, pinned by its letter
		await session(/^Tuesday 6 April 2027/).focus()
		for (const _ of [1, 2, 3, 4]) await page.keyboard.press('ArrowRight')
		await expect(match).toBeFocused()
		await page.keyboard.press('b')
		await expect(match).toHaveAccessibleName(/pinned to pair B, turf shoes/)
		await expect(page.getByText('plan again. Chart and calendar wait for it.')).toBeVisible()
		await expect(page.getByRole('button', { name: 'Wall chart', exact: true })).toHaveCount(0)
		// opened: why this pair, and what hindered the others
		await page.keyboard.press('Enter')
		const day = page.getByRole('region', { name: 'Saturday 10 April 2027' })
		await expect(day.getByRole('heading', { level: 2 })).toBeFocused()
		await expect(day.getByRole('heading', { name: 'Why this pair' })).toBeVisible()
		await page.keyboard.press('Escape')
		await expect(match).toBeFocused()
		// the pin off by key, and on again by the dragged mark
		await page.keyboard.press('Delete')
		await expect(match).not.toHaveAccessibleName(/pinned/)
		const marks = page.getByRole('list', { name: 'Pairs' })
		await marks.getByTitle('Drag onto a session to pin B').dragTo(match)
		await expect(match).toHaveAccessibleName(/pinned to pair B, turf shoes/)
		await marks.getByTitle('Drag onto a session to take its pin off').dragTo(match)
		await expect(match).not.toHaveAccessibleName(/pinned/)
		await match.focus()
		await page.keyboard.press('b')
		// and one session called off through its own form
		const tuesday = session(/^Tuesday 13 April 2027/)
		await tuesday.press('Enter')
		const form = page.getByRole('form', { name: 'One session' })
		await form.getByLabel('Takes place').focus()
		await page.keyboard.type('no: rained')
		await page.getByRole('button', { name: 'Change this session' }).press('Enter')
		await expect(tuesday).toHaveAccessibleName(/called off/)
		await expect(tuesday).toBeFocused()

		// what becomes different is shown, left, asked for again, and taken
		const different = page.getByRole('region', { name: /^What becomes different/ })
		await plan.press('Enter')
		await planned(page)
		const pinnedNow = 'Saturday 10 April 2027, 10:30, match: A (firm boots) becomes B (turf shoes)'
		await expect(different).toContainText(pinnedNow)
		await expect(different).toContainText('Tuesday 13 April 2027, 18:00, training: cancelled')
		await expect(match).toHaveAccessibleName(/dry: pair A, firm boots/)
		await page.getByRole('button', { name: 'Leave it' }).press('Enter')
		await expect(different).toHaveCount(0)
		await expect(match).toHaveAccessibleName(/dry: pair A, firm boots/)
		await plan.press('Enter')
		await expect(different).toContainText(pinnedNow, { timeout: 60_000 })
		await page.getByRole('button', { name: 'Take this plan' }).press('Enter')
		await expect(match).toHaveAccessibleName(/dry: pair B, turf shoes/)
		await match.press('Enter')
		await expect(day).toContainText('Chosen by the clinician')
		await page.keyboard.press('Escape')
		await page.screenshot({ path: 'test-results/season.png', fullPage: true })

		await page.getByRole('button', { name: 'Wall chart', exact: true }).press('Enter')
		await expect(page.locator('iframe[title="Wall chart"]')).toBeVisible({ timeout: 30_000 })
		const { base64 } = await hostCall<{ base64: string }>(page, 'season.chart', {
			playerId,
			paper: 'A4',
		})
		const pdf = await getDocument({
			data: new Uint8Array(Buffer.from(base64, 'base64')),
			useSystemFonts: false,
		}).promise
		const words = (await (await pdf.getPage(1)).getTextContent()).items
			.map((item) => ('str' in item ? item.str : ''))
			.join(' ')
		expect(words).toContain('Ines Calloway')
		expect(words).not.toMatch(/apophysitis|undefined|NaN/)
		const download = page.waitForEvent('download')
		await page.getByRole('button', { name: 'Save calendar (.ics)' }).press('Enter')
		expect((await download).suggestedFilename()).toBe('season.ics')

		await page.getByRole('button', { name: 'Close', exact: true }).press('Enter')
		const { violations } = await new AxeBuilder({ page }).analyze()
		expect(
			violations.map(
				(one) => `${one.id}: ${one.nodes.map((node) => node.html.slice(0, 120)).join(' | ')}`,
			),
		).toEqual([])

		// nothing is lost on opening again
		await page.reload()
		await expect(match).toHaveAccessibleName(/pinned to pair B/)
		expect(faults).toEqual([])
	} finally {
		await host.kill()
		rmSync(data, { recursive: true, force: true })
	}
})

test('a fixture list is shown before it is taken over, and an ambiguous date is asked', async ({
	page,
}) => {
	const host = await startHost('--demo')
	try {
		await page.goto(host.url)
		await expect(page.getByRole('heading', { level: 1 })).toBeVisible()
		const { cards } = await hostCall<{ cards: { playerId: string }[] }>(page, 'players.search', {
			query: 'freya',
			limit: 1,
		})
		await page.evaluate((id) => {
			location.hash = `#/season/${id}`
		}, cards[0]!.playerId)
		await page
			.getByLabel('or paste its text')
			.fill('Date;Time;Opponent;Surface\n03/04/2027;14:00;Harbour (match);natural firm\n')
		await page.getByRole('button', { name: 'Show what would change' }).press('Enter')
		const question = page.getByLabel(/^Is 03\/04\/2027 3 April 2027/)
		await question.focus()
		await page.keyboard.type('day first')
		await page.getByRole('button', { name: 'Read again with these answers' }).press('Enter')
		await expect(page.getByText('Would be added (1)')).toBeVisible()
		const row = page.getByRole('grid').getByRole('button', { name: /Harbour/ })
		await expect(row).toHaveCount(0)
		await page.getByRole('button', { name: 'Take these 1 changes over' }).press('Enter')
		await expect(row).toHaveCount(1)
		await page.getByRole('button', { name: 'Take back' }).press('Enter')
		await expect(row).toHaveCount(0)
	} finally {
		await host.kill()
	}
})
