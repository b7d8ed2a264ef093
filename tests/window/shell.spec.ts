/**
 * The Electron shell itself. Runs wherever Electron's runtime is installed; elsewhere it says that
 * it did not run.
 */
import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { _electron, type ElectronApplication, expect, type Page, test } from '@playwright/test'

const root = fileURLToPath(new URL('../..', import.meta.url))
const pathFile = join(root, 'node_modules/electron/path.txt')
const executablePath = existsSync(pathFile)
	? join(root, 'node_modules/electron/dist', readFileSync(pathFile, 'utf8').trim())
	: undefined

test.describe('the Electron window', () => {
	test.skip(
		executablePath === undefined || !existsSync(executablePath),
		"skipped: Electron's runtime is not installed on this machine, so the shell was only " +
			'type-checked',
	)
	let data = ''
	let app: ElectronApplication
	let page: Page
	const launch = async () => {
		app = await _electron.launch({
			executablePath: executablePath ?? '',
			args: [join(root, 'electron/window/main.ts')],
			cwd: root,
			env: { ...(process.env as Record<string, string>), LASTWRIGHT_DATA: data },
		})
		page = await app.firstWindow()
		await expect(page.getByRole('button', { name: 'Set up' })).toBeVisible()
	}
	test.beforeEach(async () => {
		data = mkdtempSync(join(tmpdir(), 'lastwright-shell-'))
		await launch()
	})
	test.afterEach(() => app.close())

	test('opens on the set-up screen, isolated from Node, with one bridge', async () => {
		expect(
			await page.evaluate(() => [
				typeof (globalThis as Record<string, unknown>).require,
				typeof (globalThis as Record<string, unknown>).process,
			]),
		).toEqual(['undefined', 'undefined'])
		expect(
			await page.evaluate(() =>
				Object.keys((globalThis as unknown as { lastwright: object }).lastwright),
			),
		).toEqual(['call', 'print', 'choose'])
	})
	test('goes nowhere: by address, by a new window, by a frame', async () => {
		const start = page.url()
		for (const url of [
			'https://evil.example/',
			'file:///etc/passwd',
			'app://evil/',
			'data:text/html,x',
		]) {
			await page
				.evaluate((to) => {
					location.href = to
				}, url)
				.catch(() => {})
			await page.waitForTimeout(200)
			expect(page.url()).toBe(start)
		}
		expect(await page.evaluate(() => window.open('https://evil.example/') === null)).toBe(true)
		expect(app.windows()).toHaveLength(1)
	})
	test('asks for no permission and reaches no network', async () => {
		expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied')
		expect(
			await page.evaluate(() =>
				fetch('https://evil.example/').then(
					() => 'reached',
					() => 'refused',
				),
			),
		).toBe('refused')
	})
	test('runs no script that is not its own file', async () => {
		expect(
			await page.evaluate(
				() =>
					new Promise<string>((resolve) => {
						document.addEventListener('securitypolicyviolation', () => resolve('blocked'), {
							once: true,
						})
						const script = document.createElement('script')
						script.textContent = 'document.title = "run"'
						document.body.append(script)
						setTimeout(() => resolve('silent'), 1000)
					}),
			),
		).toBe('blocked')
	})
	test('keeps its place, and a spoilt note of it does no harm', async () => {
		await app.evaluate(({ BrowserWindow }) =>
			BrowserWindow.getAllWindows()[0]?.setBounds({ x: 40, y: 40, width: 1100, height: 760 }),
		)
		await app.close()
		const file = join(data, 'window/place.json')
		expect(JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({
			width: 1100,
			height: 760,
			maximized: false,
		})
		await launch()
		expect(
			await app.evaluate(
				({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.getBounds().width,
			),
		).toBe(1100)
		await app.close()
		writeFileSync(file, '{"width":')
		await launch()
	})
	test('says plainly that the screens stopped, and opens them again', async () => {
		const stopped = page.waitForEvent('crash')
		await app.evaluate(({ BrowserWindow }) =>
			BrowserWindow.getAllWindows()[0]?.webContents.forcefullyCrashRenderer(),
		)
		await stopped
		await expect
			.poll(() =>
				app.evaluate(({ BrowserWindow }) => BrowserWindow.getAllWindows()[0]?.webContents.getURL()),
			)
			.toContain('/stopped')
	})
	test('a second start brings the first window forward and ends', async () => {
		const second = await _electron
			.launch({
				executablePath: executablePath ?? '',
				args: [join(root, 'electron/window/main.ts')],
				cwd: root,
				env: { ...(process.env as Record<string, string>), LASTWRIGHT_DATA: data },
			})
			.catch(() => undefined)
		await expect.poll(() => second?.windows().length ?? 0).toBe(0)
		expect(app.windows()).toHaveLength(1)
	})
})
