/** A second start, screens that stop or do not answer, what is not saved, the end. */
import { spawn } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect } from '@playwright/test'
import type { Checks } from './checks.ts'
import { answers, heard } from './said.ts'
import { patience, thePage, theWindow } from './the-window.ts'
import { openWindows } from './window.ts'

const hooks = new URL('./hooks.ts', import.meta.url).href
const start = fileURLToPath(new URL('./start.ts', import.meta.url))
/** Starts the shell once more on the same records. @returns what was told of its checks */
const again = (...names: string[]): Promise<string> =>
	new Promise((resolve) => {
		const given = ['--disable-warning=ExperimentalWarning', '--import', hooks, start]
		const child = spawn(process.execPath, [...given, JSON.stringify(names)])
		let text = ''
		child.stdout.on('data', (chunk: Buffer) => {
			text += chunk.toString()
		})
		child.on('exit', () => resolve(text))
	})
async function stop(): Promise<void> {
	await thePage()
	const { webContents } = await theWindow()
	const { page, devtools } = webContents
	void devtools.send('Page.crash').catch(() => {})
	await expect.poll(() => webContents.page !== page, patience).toBe(true)
}
/** The page has something that it would lose. */
const holdOn = async (): Promise<void> => {
	const page = await thePage()
	// a page may only ask to stay once a person did something on it
	await page.locator('h1').first().click()
	await page.evaluate(() => {
		addEventListener('beforeunload', (event) => event.preventDefault())
	})
}
export const leavingChecks: Checks = {
	'comes forward at a second start, which ends': async () => {
		const window = await theWindow()
		window.minimize()
		expect(await again('opens no window')).toContain('"fault":""')
		await expect.poll(() => heard('focused').length, patience).toBe(1)
		expect([heard('restored').length, window.isMinimized()]).toEqual([1, false])
	},
	'opens no window': async () => {
		await expect.poll(() => heard('quit'), patience).toHaveLength(1)
		expect(openWindows()).toEqual([])
	},
	'waits for screens that do not answer, or opens them again': async () => {
		const window = await theWindow()
		const { page } = window.webContents
		const asked = heard('message box').length
		answers.buttons.push(0, 1)
		window.emit('unresponsive')
		await expect.poll(() => heard('message box').length, patience).toBe(asked + 1)
		const opened = page.waitForEvent('load', patience)
		window.emit('unresponsive')
		await opened
	},
	'says that the screens stopped, and opens them again': async () => {
		await stop()
		const { webContents } = await theWindow()
		const { page } = webContents
		const heading = page.getByRole('heading', { name: 'The screens stopped' })
		await expect(heading).toBeVisible(patience)
		await page.getByRole('link', { name: 'Open the screens again' }).click()
		await expect(heading).toHaveCount(0, patience)
		await expect(page.locator('h1').first()).toBeVisible(patience)
		expect(webContents.getURL()).toMatch(/^app:\/\/lastwright\/(?:#|$)/)
	},
	'gives up after three stops within a minute': async () => {
		await stop()
		const { devtools } = (await theWindow()).webContents
		void devtools.send('Page.crash').catch(() => {})
		await expect.poll(() => heard('exit'), patience).toEqual([1])
		expect(heard('error box')).toMatchObject([{ title: 'Lastwright has to close' }])
	},
	'asks before it closes over what is not saved': async () => {
		await holdOn()
		const window = await theWindow()
		answers.buttons.push(0)
		window.close()
		await expect.poll(() => heard('asks to stay'), patience).toEqual([false])
		expect(openWindows()).toHaveLength(1)
		window.stays()
		answers.buttons.push(1)
		window.close()
		await expect.poll(() => heard('quit'), patience).toHaveLength(1)
		expect(heard('asks to stay')).toEqual([false, true])
	},
	'keeps its place and ends with its window': async () => {
		const window = await theWindow()
		window.setBounds({ x: 40, y: 40, width: 1100, height: 760 })
		await thePage()
		window.close()
		await expect.poll(() => heard('quit'), patience).toHaveLength(1)
		const file = join(process.env.LASTWRIGHT_DATA ?? '', 'window/place.json')
		expect(existsSync(file) && JSON.parse(readFileSync(file, 'utf8'))).toMatchObject({
			x: 40,
			y: 40,
			width: 1100,
			height: 760,
			maximized: false,
		})
	},
	'opens where it was left': async () => {
		expect((await theWindow()).getBounds()).toEqual({ x: 40, y: 40, width: 1100, height: 760 })
	},
	'opens whatever the note of its place says': async () => {
		expect((await theWindow()).getBounds()).toMatchObject({ width: 1440, height: 900 })
	},
	'says why records do not open, and ends': async () => {
		await expect.poll(() => heard('quit'), patience).toHaveLength(1)
		expect(heard('error box')).toMatchObject([
			{ title: 'Lastwright cannot open the records', text: expect.stringMatching(/\w/) },
		])
		expect(openWindows()).toEqual([])
	},
	'says that a fault of its own ended it': async () => {
		await thePage()
		process.emit('uncaughtException', new Error('a name of a player'))
		expect(heard('exit')).toEqual([1])
		expect(JSON.stringify(heard('error box'))).toMatch(/Your records are safe/)
		expect(JSON.stringify(heard('error box'))).not.toContain('a name of a player')
	},
}
