/**
 * The way into the browser window: the address stands in a file of its owner, and the strict cookie
 * holds from the first page on.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { expect, test } from '@playwright/test'
import { writeDoor } from '../../electron/loopback/browser.ts'
import { startHost } from '../screens/host.ts'

test('a real browser comes in from the file, once', async ({ page, browser }) => {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-door-'))
	const host = await startHost('--demo')
	try {
		const door = writeDoor(folder, host.url)
		await page.goto(door)
		await expect(page.getByRole('button', { name: 'Lock' })).toBeVisible()
		await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
		expect(page.url()).not.toContain('t=')
		// a first question that is cut off, as on a PC that is busy, is asked again by itself
		const late = await page.context().newPage()
		await late.route('**/call/session.status', (route) => route.abort(), { times: 1 })
		await late.goto(new URL(host.url).origin)
		await expect(late.getByText('The workstation did not answer.', { exact: false })).toBeVisible()
		await expect(late.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible()
		const other = await (await browser.newContext()).newPage()
		await other.goto(door)
		await expect(other.getByText('This address was used already', { exact: false })).toBeVisible()
	} finally {
		await host.kill()
		rmSync(folder, { recursive: true, force: true })
	}
})
