/** Not committed. */
import { chromium } from '@playwright/test'
import { startHost } from './host.ts'
import { hostCall, settled, still } from './drive.ts'
const browser = await chromium.launch({ executablePath: '/usr/bin/chromium', args: ['--no-sandbox'] })
const demo = await startHost('--demo')
try {
	const page = await browser.newPage({ viewport: { width: 1280, height: 720 } })
	page.on('pageerror', (e) => console.log('fault', e.message))
	page.on('console', (m) => { if (m.type() === 'error') console.log('console', m.text()) })
	await page.goto(demo.url)
	const { cards } = await hostCall(page, 'players.search', { query: process.argv[2] ?? 'tui', limit: 1 })
	await page.evaluate((to) => { location.hash = to }, `#/assessment/${cards[0].playerId}`)
	await page.getByRole('navigation', { name: 'Steps' }).getByRole('button', { name: 'Decide', exact: true }).click()
	await settled(page)
	const rows = page.locator('button[data-question]')
	const n = await rows.count()
	for (let at = 0; at < n; at++) {
		const row = rows.nth(at)
		const id = await row.getAttribute('data-question')
		if (await row.getAttribute('aria-expanded') === 'false') await row.press('Enter')
		await still(page)
		await row.press('c')
		await still(page)
		const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
		if (wide > 0) console.log(id, 'wider by', wide)
		await page.screenshot({ path: `/tmp/look-${id}.png`, fullPage: true })
	}
	// all by A
	await rows.first().focus()
	for (let at = 0; at < 2 * n; at++) await page.keyboard.press('a')
	await still(page)
	console.log(await page.getByRole('status').allTextContents())
	console.log(await rows.evaluateAll((all) => all.map((x) => x.textContent)))
} finally { await browser.close(); await demo.kill() }
