/**
 * A screening day of 40 in a real browser, the stations by keyboard alone: roster, swaps, gaps,
 * signing one by one, reports, the club's summary; then a pack.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, type Page, test } from '@playwright/test'
import { choosePath } from './choosing.ts'
import { agreeOnSign, decideOn, hostCall, settleQuestions, signButton } from './drive.ts'
import { startHost } from './host.ts'
import {
	checkInElsewhere,
	checkInHere,
	noteAbsentAndRefused,
	setUp,
	takeRoster,
} from './squad-board.ts'
import { adults, boardOf, call, desk, named, noWidth } from './squad-day.ts'
import { anklesAndFootwear, takeMeasures } from './squad-stations.ts'

/** The clinician sees what is missing, and signs one by one. */
async function signAtScreen(page: Page) {
	await desk(page, 'Clinician').press('Enter')
	await call(page, noWidth, 'Clinician')
	await expect(
		page.getByText(/Measures\s+lacks .*Ball width, left; Ball width, right/),
	).toBeVisible()
	await page.getByRole('button', { name: 'Back to the board' }).press('Enter')
	await expect(page.getByRole('button', { name: /sign all/i })).toHaveCount(0)
	for (const [at, number] of adults.entries()) {
		await call(page, number, 'Clinician')
		await page.getByRole('button', { name: 'Open the assessment and sign' }).press('Enter')
		await expect(page.getByRole('heading', { name: 'Sign' })).toBeVisible()
		const sign = signButton(page)
		// nothing is signed with a question open: each is settled on Decide, and back
		await expect(sign).toBeDisabled()
		const steps = page.getByRole('navigation', { name: 'Steps' })
		await steps.getByRole('button', { name: 'Decide' }).press('Enter')
		await settleQuestions(page)
		await steps.getByRole('button', { name: 'Sign' }).press('Enter')
		await agreeOnSign(page)
		await expect(sign).toBeEnabled()
		await sign.press('Enter')
		await expect(page.getByText('Signed', { exact: true }).first()).toBeVisible({
			timeout: 20_000,
		})
		await page.getByRole('link', { name: 'Squad day' }).press('Enter')
		await page.getByRole('link', { name: 'Open the board' }).press('Enter')
		await expect(page.getByRole('status').filter({ hasText: `${at + 1} signed` })).toBeVisible()
	}
}
/** The others as the screen does it, each draft by a signature of its own. */
async function signOthers(page: Page, squadId: string): Promise<number> {
	const { rows, day } = await boardOf(page, squadId)
	const rest = rows.filter(
		({ state, number }) => state === 'open' && Number(number) !== noWidth && Number(number) <= 24,
	)
	for (const { playerId } of rest) {
		await hostCall(page, 'visits.sign', { draftId: await decideOn(page, playerId, day) })
	}
	const signed = adults.length + rest.length
	await expect(
		page.getByRole('status').filter({ hasText: `${signed} signed, 1 absent, 1 refused` }),
	).toBeVisible({ timeout: 10_000 })
	return signed
}
/** The writing may be over before a hand far away finds the button: pressed in the page itself. */
const cancelledWhenSeen = (page: Page) =>
	page.evaluate(() => {
		const watch = new MutationObserver(() => {
			const all = [...document.querySelectorAll('button')]
			const cancel = all.find((button) => button.textContent === 'Cancel')
			if (!cancel) return
			watch.disconnect()
			cancel.click()
		})
		watch.observe(document.body, { childList: true, subtree: true })
	})
/** Cancelled on the way, then whole: for each a report, for each minor the guardian's page. */
async function writeReports(page: Page, folder: string, signed: number) {
	const pages = signed + signed - adults.length
	const said = page.getByRole('status').filter({ hasText: /of \d+ players/ })
	await choosePath(page, page, 'Folder for the reports', folder)
	await cancelledWhenSeen(page)
	await page.getByRole('button', { name: 'Write the reports' }).press('Enter')
	await expect(said).toContainText(/Cancelled\. \d+ of \d+ players are written and whole\./)
	await expect(said).toContainText(`of ${signed} players`)
	const whole = Number(/Cancelled\. (\d+)/.exec((await said.textContent()) ?? '')?.[1])
	expect(whole).toBeLessThan(signed)
	expect(readdirSync(folder).filter((name) => name.endsWith('-report.pdf'))).toHaveLength(whole)
	await page.getByRole('button', { name: 'Write the reports' }).press('Enter')
	await expect(said).toHaveText(`${signed} of ${signed} players, ${pages} files. Done.`, {
		timeout: 60_000,
	})
	const files = readdirSync(folder)
	expect(files).toHaveLength(pages)
	expect(files.join(' ')).not.toMatch(/Given|Fam|writing/)
}
/** The club's summary holds those who consented, and says who was left out. */
async function summaryForClub(page: Page, day: string) {
	const saved = page.waitForEvent('download')
	await page.getByRole('button', { name: 'Summary for the club', exact: true }).press('Enter')
	expect((await saved).suggestedFilename()).toBe(`squad-${day}-club.pdf`)
	const left = page.getByRole('alert').filter({ hasText: 'Left out of it: 3 players.' })
	await expect(left).toContainText(named(8))
	await expect(left).not.toContainText(`${named(adults[0] ?? 0)}:`)
}
async function makePack(page: Page, folder: string) {
	await page.getByRole('link', { name: 'Outreach' }).press('Enter')
	await expect(page.getByRole('heading', { name: 'Make a pack' })).toBeVisible()
	const all = page.getByRole('button', { name: 'Choose all that are shown' })
	await expect(all).toBeEnabled()
	await all.press('Enter')
	await expect(page.getByText('40 chosen.', { exact: false })).toBeVisible()
	await choosePath(page, page, 'Folder or stick', folder)
	await page.getByLabel('Passphrase of the pack', { exact: true }).first().fill('three mild otters')
	await page.getByLabel('Passphrase of the pack again').fill('three mild otters')
	await page.getByRole('button', { name: 'Make the pack' }).press('Enter')
	await expect(page.getByText('40 players', { exact: false }).first()).toBeVisible({
		timeout: 30_000,
	})
}

test('a day of 40 players, from the roster to the summary for the club', async ({ page }, info) => {
	test.setTimeout(300_000)
	const data = mkdtempSync(join(tmpdir(), 'lastwright-squad-'))
	const reports = mkdtempSync(join(tmpdir(), 'lastwright-squad-reports-'))
	const faults: string[] = []
	page.on('console', (message) => {
		if (/Content Security Policy|unique "key"/i.test(message.text())) faults.push(message.text())
	})
	page.on('pageerror', (error) => faults.push(error.message))
	const host = await startHost('--data', data)
	let from = Date.now()
	const lap = (what: string) => {
		info.annotations.push({
			type: 'seconds',
			description: `${what}: ${((Date.now() - from) / 1000).toFixed(1)}`,
		})
		if (process.env.LASTWRIGHT_LAPS)
			console.log(`${what}: ${((Date.now() - from) / 1000).toFixed(1)} s`)
		from = Date.now()
	}
	const shot = (name: string) =>
		page.screenshot({ path: info.outputPath(`${name}.png`), fullPage: true })
	try {
		await page.goto(host.url)
		await setUp(page)
		await page.reload()
		const squadId = await takeRoster(page, shot)
		lap('roster')

		await noteAbsentAndRefused(page)
		const start = await boardOf(page, squadId)
		await checkInElsewhere(page, start)
		await checkInHere(page)
		lap('check-in of 38, 14 at the screen')

		await takeMeasures(page, shot)
		lap('measures of 38')

		await anklesAndFootwear(page)
		await shot('board')
		lap('ankles of 8, footwear of 2')

		await signAtScreen(page)
		lap('signing of 4 at the screen')
		const signed = await signOthers(page, squadId)
		lap(`signing of ${signed - adults.length} more`)

		await writeReports(page, reports, signed)
		lap('reports')

		await summaryForClub(page, start.day)
		await shot('after')
		lap('summary')

		await makePack(page, reports)
		await shot('outreach')
		lap('pack')
		expect(faults).toEqual([])
	} finally {
		await host.kill()
		for (const folder of [data, reports]) rmSync(folder, { recursive: true, force: true })
	}
})
