/**
 * Makes the README's pictures from the demo: the Feet step and the first page of a player report.
 */
import { execFileSync } from 'node:child_process'
import { mkdirSync, mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium, expect } from '@playwright/test'
import { still } from './screens/drive.ts'
import { startHost } from './screens/host.ts'
import ownTemporary from './temporary.ts'

const root = fileURLToPath(new URL('..', import.meta.url))
const clearUp = ownTemporary()
const out = join(root, 'assets/pictures')
mkdirSync(out, { recursive: true })

const scratch = mkdtempSync(join(tmpdir(), 'lastwright-pictures-'))
const pdf = join(scratch, 'report.pdf')
execFileSync(
	process.execPath,
	[
		'--disable-warning=ExperimentalWarning',
		'electron/command/main.ts',
		'report',
		'assets/demo/visit-adolescent.json',
		'--kind',
		'player',
		'--clinic',
		'assets/demo/clinic.json',
		'--out',
		pdf,
	],
	{ cwd: root, stdio: 'inherit' },
)
execFileSync('pdftoppm', [
	'-r',
	'80',
	'-png',
	'-f',
	'1',
	'-l',
	'1',
	'-singlefile',
	pdf,
	join(out, 'report-page'),
])

const host = await startHost('--demo')
const browser = await chromium.launch({
	...(process.env.LASTWRIGHT_BROWSER ? { executablePath: process.env.LASTWRIGHT_BROWSER } : {}),
	args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--no-first-run'],
})
try {
	const page = await browser.newPage({ viewport: { width: 1440, height: 900 } })
	await page.goto(host.url)
	await page.getByRole('textbox', { name: /search/i }).fill('tui')
	await page.keyboard.press('Enter')
	await page.getByRole('button', { name: /(Start|Resume) assessment/ }).click()
	await page.getByRole('button', { name: 'Feet', exact: true }).click()
	await page.getByRole('textbox', { name: 'Heel to toe, left' }).fill('246 247')
	await page.keyboard.press('Enter')
	await page.keyboard.type('249 248')
	await expect(page.getByText(/mean 248.5/)).toBeVisible()
	await still(page)
	await page.screenshot({ path: join(out, 'main-screen.png') })
} finally {
	await browser.close()
	await host.kill()
	clearUp()
}
