/**
 * What the first screen has to load, and that nothing moves under the eye: sizes and shifts, no
 * times, so that a busy PC changes nothing. Times stand in the bench.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { expect, type Page, test } from '@playwright/test'
import { settled } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'

const built = fileURLToPath(new URL('../../build/renderer', import.meta.url))
/** bytes gzipped: the budget of the program for the first screen's script */
const most = 400_000
/**
 * Layout shift of a screen that opens; a page that stands still has 0, one that jumps by a line
 * about 0.05.
 */
const shiftMost = 0.02

/** The scripts of the page and all that they load at once. */
function firstScripts(): Set<string> {
	const page = readFileSync(join(built, 'index.html'), 'utf8')
	const names = new Set(
		[...page.matchAll(/(?:src|href)="[^"]*\/([\w-]+\.js)"/g)].map(([, name]) => name!),
	)
	for (const name of names)
		for (const found of readFileSync(join(built, 'assets', name), 'utf8').matchAll(
			/(?:^|[;}\s])(?:import|export)[^;"'()]*["']\.\/([\w-]+\.js)["']/g,
		))
			names.add(found[1]!)
	return names
}
test(
	'the script of the first screen is under 400 kB gzipped, and the rooms come when they are ' +
		'opened',
	() => {
		const names = firstScripts()
		expect(names.size).toBeGreaterThan(0)
		const bytes = [...names].reduce(
			(sum, name) => sum + gzipSync(readFileSync(join(built, 'assets', name))).length,
			0,
		)
		console.log(`first screen: ${names.size} scripts, ${Math.round(bytes / 1000)} kB gzipped`)
		expect(bytes).toBeLessThan(most)
		const rest = readdirSync(join(built, 'assets')).filter(
			(name) => name.endsWith('.js') && !names.has(name),
		)
		for (const room of ['assessment', 'season', 'shelf', 'outbox', 'trends', 'settings'])
			expect(
				rest.some((name) => name.startsWith(`${room}-`)),
				`${room} waits until it is opened`,
			).toBe(true)
	},
)
test.describe('nothing moves under the eye', () => {
	let host: RunningHost
	test.beforeEach(async () => {
		host = await startHost('--demo')
	})
	test.afterEach(() => host.kill())
	const shifts = (page: Page) =>
		page.evaluate(() => (window as unknown as { shifts: { value: number; what: string }[] }).shifts)
	test('the main screens open without a jump', async ({ page }) => {
		await page.addInitScript(() => {
			const kept: { value: number; what: string }[] = []
			Object.assign(window, { shifts: kept })
			new PerformanceObserver((list) => {
				for (const shift of list.getEntries() as unknown as {
					value: number
					hadRecentInput: boolean
					sources: { node: Node | null }[]
				}[])
					if (!shift.hadRecentInput)
						kept.push({
							value: shift.value,
							what: shift.sources
								.map(({ node }) =>
									node instanceof Element
										? `${node.tagName.toLowerCase()} ${(node.textContent ?? '').slice(0, 40)}`
										: 'text',
								)
								.join(' | '),
						})
			}).observe({ type: 'layout-shift', buffered: true })
		})
		await page.goto(host.url)
		const answer = await page.evaluate(async () =>
			(
				await fetch('/call/players.search', {
					method: 'POST',
					headers: { 'content-type': 'application/json' },
					body: JSON.stringify({ query: 'tui', limit: 1 }),
				})
			).json(),
		)
		const id = String(answer.value.cards[0].playerId)
		const found: string[] = []
		for (const address of [
			'players',
			`players/${id}`,
			`assessment/${id}`,
			`trends/${id}`,
			`season/${id}`,
			'shelf',
			'outbox',
			'squad',
			'settings/look',
			'help/measures',
		]) {
			await page.goto(`${new URL(host.url).origin}/#/${address}`)
			await page.reload()
			await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible()
			// what could still push the page has come: it is answered, and the browser has nothing to do
			await settled(page)
			await page.evaluate(() => new Promise((idle) => requestIdleCallback(idle)))
			const all = await shifts(page)
			const sum = all.reduce((total, shift) => total + shift.value, 0)
			console.log(`${address.split('/')[0]}: shift ${sum.toFixed(4)}`)
			if (sum > shiftMost)
				found.push(
					`${address} shifts by ${sum.toFixed(3)}: ` +
						`${all.map(({ value, what }) => `${value.toFixed(3)} ${what}`).join('; ')}`,
				)
		}
		expect(found.join('\n')).toBe('')
	})
})
