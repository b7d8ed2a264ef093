/** The window goes nowhere, opens nothing and reaches nothing. */
import { expect } from '@playwright/test'
import type { Checks } from './checks.ts'
import { answers, heard } from './said.ts'
import { called, patience, thePage, theWindow } from './the-window.ts'

/** Addresses that a window must never show. */
const elsewhere = ['https://evil.example/', 'http://127.0.0.1:9/', 'app://evil/']
interface Went {
	url: string
	isMainFrame: boolean
	isStopped: boolean
}
const went = (): Went[] => heard('navigates') as Went[]

export const stayingChecks: Checks = {
	'goes nowhere by an address': async () => {
		const page = await thePage()
		const start = page.url()
		for (const url of elsewhere) {
			const before = went().length
			await page.evaluate((to) => {
				location.href = to
			}, url)
			await expect.poll(() => went().length, { ...patience, message: url }).toBeGreaterThan(before)
			expect(went().at(-1), url).toMatchObject({ isMainFrame: true, isStopped: true })
			expect(page.url()).toBe(start)
		}
		// here the page refuses by itself, and the shell is not asked
		for (const url of ['file:///etc/passwd', 'data:text/html,x']) {
			const refused = page.waitForEvent('console', patience)
			await page.evaluate((to) => {
				location.href = to
			}, url)
			expect((await refused).text()).toMatch(/^Not allowed to (?:load|navigate)/)
			expect(page.url()).toBe(start)
		}
	},
	'lets no frame go elsewhere': async () => {
		const page = await thePage()
		await page.evaluate(() => {
			const frame = document.createElement('iframe')
			frame.src = 'https://evil.example/frame'
			document.body.append(frame)
		})
		// by the policy of the page or by the shell: it never leaves
		await page.evaluate(() => document.querySelector('iframe')?.remove())
		expect(went().filter(({ isMainFrame, isStopped }) => !isMainFrame && !isStopped)).toEqual([])
		expect(heard('left the house')).toEqual([])
	},
	'opens no second window': async () => {
		const page = await thePage()
		await page.evaluate(() => void window.open('https://evil.example/'))
		await expect
			.poll(() => heard('window.open'), patience)
			.toContainEqual({ url: 'https://evil.example/', action: 'deny' })
		expect(heard('message box')).toEqual([])
		expect(heard('opened outside')).toEqual([])
	},
	'opens a source outside after a yes, and not after a no': async () => {
		const page = await thePage()
		const source = 'https://doi.org/10.1000/182'
		const asked = () => heard('message box').length
		answers.buttons.push(0)
		await page.evaluate((to) => void window.open(to), source)
		await expect.poll(asked, patience).toBe(1)
		answers.buttons.push(1)
		await page.evaluate((to) => void window.open(to), source)
		await expect.poll(() => heard('opened outside'), patience).toEqual([source])
		expect(asked()).toBe(2)
	},
	'reaches no network': async () => {
		const page = await thePage()
		const reached = await page.evaluate(() =>
			fetch('https://evil.example/').then(
				() => 'reached',
				() => 'refused',
			),
		)
		expect(reached).toBe('refused')
		// the shell refuses by itself, whatever the policy of the page
		const { pages } = (await theWindow()).webContents
		for (const url of [
			...elsewhere.slice(0, 3),
			'file:///etc/passwd',
			'ws://127.0.0.1/',
			'chrome://settings/',
		])
			expect(await pages.mayFetch(url), url).toBe(false)
		expect(await pages.mayFetch('app://lastwright/index.html')).toBe(true)
		expect(heard('left the house')).toEqual([])
	},
	'serves its own files and nothing beside them': async () => {
		const { pages } = (await theWindow()).webContents
		const status = async (path: string, method = 'GET') =>
			(await pages.answer(`app://lastwright/${path}`, method))?.status
		expect(await status('')).toBe(200)
		expect(await status('', 'POST')).toBe(405)
		expect(await status('..%2f..%2fpackage.json')).toBe(404)
		expect(await status('paper/00000000000000000000000000000000.pdf')).toBe(404)
		expect((await pages.answer('app://evil/', 'GET'))?.status).toBe(403)
	},
	'answers no frame, on any channel': async () => {
		const page = await thePage()
		const answered = await page.evaluate(async () => {
			const frame = document.createElement('iframe')
			frame.src = URL.createObjectURL(new Blob(['<p>x'], { type: 'text/html' }))
			const loaded = new Promise((resolve) => frame.addEventListener('load', resolve))
			document.body.append(frame)
			await loaded
			type Given = Record<string, (...given: unknown[]) => Promise<unknown>>
			const { lastwright } = frame.contentWindow as unknown as { lastwright: Given }
			const all = await Promise.all([
				lastwright.call?.('session.status', {}),
				lastwright.print?.('JVBERi0='),
				lastwright.choose?.('backups'),
			])
			frame.remove()
			return all
		})
		const refused = { ok: false, code: 'call.another-page' }
		expect(answered).toMatchObject([refused, { printed: false, says: '' }, refused])
		expect(heard('unseen')).toEqual([])
		expect(heard('open dialog')).toEqual([])
	},
	'refuses a call that there is none of in words': async () => {
		const page = await thePage()
		expect(await called(page, 'call', 'no.such', {})).toMatchObject({
			ok: false,
			message: expect.stringMatching(/\w/),
		})
	},
}
