/**
 * Takes every screen of the demo in light, dark and with text of 200 % into build/pictures/ (the
 * browser tests empty test-results/ at each start), to be looked at. Names of screens may be given
 * to take only those.
 */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from '@playwright/test'
import { still } from './screens/drive.ts'
import { startHost } from './screens/host.ts'
import { type Look, put, tour } from './screens/tour.ts'
import ownTemporary from './temporary.ts'

const out = join(fileURLToPath(new URL('..', import.meta.url)), 'build/pictures')
const only = process.argv.slice(2)
ownTemporary()
mkdirSync(out, { recursive: true })
const browser = await chromium.launch({
	...(process.env.LASTWRIGHT_BROWSER ? { executablePath: process.env.LASTWRIGHT_BROWSER } : {}),
	args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
})
const taken: Look[] = (process.env.LASTWRIGHT_LOOKS?.split(',') as Look[] | undefined) ?? [
	'light',
	'dark',
	'text of 200 %',
]
async function take(
	name: string,
	page: Awaited<ReturnType<typeof browser.newPage>>,
): Promise<void> {
	for (const look of taken) {
		await put(page, look)
		await still(page)
		await page.screenshot({
			path: join(out, `${name} ${look.replace(' %', '')}.png`.replaceAll(' ', '-')),
			fullPage: true,
		})
	}
	await put(page, 'light')
}
const demo = await startHost('--demo')
const data = mkdtempSync(join(tmpdir(), 'lastwright-shots-'))
const fresh = await startHost('--data', data)
try {
	const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
	page.on('pageerror', (error) => process.stdout.write(`fault on the page: ${error.message}\n`))
	await page.goto(demo.url)
	for (const stop of await tour(page)) {
		if (only.length > 0 && !only.includes(stop.name)) continue
		await stop.open(page)
		await take(stop.name, page)
		process.stdout.write(`${stop.name}\n`)
	}
	if (only.length === 0 || only.includes('unlock')) {
		await page.getByRole('button', { name: 'Lock' }).click()
		await page.getByLabel('Passphrase').waitFor()
		await take('unlock', page)
	}
	if (only.length === 0 || only.includes('set-up')) {
		await page.goto(fresh.url)
		await page.getByRole('heading', { name: 'Set up the clinic' }).waitFor()
		await take('set-up', page)
	}
} finally {
	await browser.close()
	await Promise.all([demo.kill(), fresh.kill()])
	rmSync(data, { recursive: true, force: true })
}
