/** How the window opens, and what its page has. */
import { expect } from '@playwright/test'
import { webPreferences } from '../../../electron/window/security.ts'
import type { Checks } from './checks.ts'
import { heard, said } from './said.ts'
import { thePage, theWindow } from './the-window.ts'

export const openingChecks: Checks = {
	'asks for the sandbox before anything else': async () => {
		await theWindow()
		expect(said[0]).toEqual({ what: 'sandbox' })
	},
	'registers its own scheme, and no other': async () => {
		await theWindow()
		expect(heard('scheme')).toEqual([
			{ scheme: 'app', standard: true, secure: true, supportFetchAPI: true },
		])
	},
	'opens one window, shown once there is something to see': async () => {
		await thePage()
		const window = await theWindow()
		expect([window.options.show, window.isShown]).toEqual([false, true])
		expect(window.options).toMatchObject({ minWidth: 1024, minHeight: 700, title: 'Lastwright' })
	},
	'gives the window no more rights than the table': async () => {
		const { options } = await theWindow()
		const preload = options.webPreferences?.preload ?? ''
		expect(preload).toMatch(/preload\.cjs$/)
		expect(options.webPreferences).toEqual(webPreferences(preload))
	},
	'has one bridge of three functions and nothing of Node': async () => {
		const page = await thePage()
		const seen = await page.evaluate(() => {
			const all = globalThis as unknown as Record<string, object>
			return [Object.keys(all.lastwright ?? {}), typeof all.require, typeof all.process]
		})
		expect(seen).toEqual([['call', 'print', 'choose'], 'undefined', 'undefined'])
	},
	'reads no device': async () => {
		await theWindow()
		expect(heard('device')).toEqual([false])
	},
	'asks for no permission and gets none but to copy': async () => {
		const page = await thePage()
		expect(await page.evaluate(() => Notification.requestPermission())).toBe('denied')
		const { pages } = (await theWindow()).webContents
		const names = ['media', 'geolocation', 'notifications', 'clipboard-read', 'midi', 'hid']
		const both = (name: string, origin: string) => [
			pages.has(name, origin),
			pages.gets(name, origin),
		]
		for (const name of names) expect(both(name, 'app://lastwright'), name).toEqual([false, false])
		expect(both('clipboard-sanitized-write', 'app://lastwright')).toEqual([true, true])
		expect(both('clipboard-sanitized-write', 'https://evil.example')).toEqual([false, false])
	},
	'runs no script that is not its own file': async () => {
		const page = await thePage()
		const ran = await page.evaluate(
			() =>
				new Promise<string>((resolve) => {
					const seen = () => resolve('blocked')
					document.addEventListener('securitypolicyviolation', seen, { once: true })
					const script = document.createElement('script')
					script.textContent = 'document.title = "run"'
					document.body.append(script)
					setTimeout(() => resolve('nothing was said'), 2000)
				}),
		)
		expect(ran).toBe('blocked')
	},
}
