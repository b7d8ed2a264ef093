/** The Electron shell itself. Runs wherever Electron's runtime is installed; elsewhere it says that it did not run. */
import { existsSync, mkdtempSync, readFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { _electron, expect, test } from '@playwright/test'

const root = fileURLToPath(new URL('../..', import.meta.url))
const pathFile = join(root, 'node_modules/electron/path.txt')
const executablePath = existsSync(pathFile) ? join(root, 'node_modules/electron/dist', readFileSync(pathFile, 'utf8').trim()) : undefined

test.describe('the Electron window', () => {
	test.skip(executablePath === undefined || !existsSync(executablePath), "skipped: Electron's runtime is not installed on this machine, so the shell was only type-checked")

	test('opens on the set-up screen, isolated from Node', async () => {
		const data = mkdtempSync(join(tmpdir(), 'lastwright-shell-'))
		const app = await _electron.launch({ executablePath: executablePath ?? '', args: [join(root, 'electron/window/main.ts')], cwd: root, env: { ...(process.env as Record<string, string>), LASTWRIGHT_DATA: data } })
		try {
			const page = await app.firstWindow()
			await expect(page.getByRole('button', { name: 'Set up' })).toBeVisible()
			expect(await page.evaluate(() => [typeof (globalThis as Record<string, unknown>).require, typeof (globalThis as Record<string, unknown>).process])).toEqual(['undefined', 'undefined'])
			expect(await page.evaluate(() => Object.keys((globalThis as unknown as { lastwright: object }).lastwright))).toEqual(['call'])
		} finally {
			await app.close()
		}
	})
})
