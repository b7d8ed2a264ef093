/** Real records through the bridge, the menu, saving, printing, choosing, a PC that sleeps. */
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { expect, type Page } from '@playwright/test'
import { keepWithinMs } from '../../../electron/window/power.ts'
import { startUrl } from '../../../electron/window/security.ts'
import type { Checks } from './checks.ts'
import { answers, heard } from './said.ts'
import { chooseInMenu, menuLines, powerMonitor } from './system.ts'
import { called, patience, thePage, theWindow } from './the-window.ts'

const passphrase = 'seven grey herons over the estuary'
const folder = process.env.LASTWRIGHT_DATA ?? ''
const clinic = {
	format: 'lastwright-clinic',
	version: 1,
	name: 'Harrow Lane Foot Clinic',
	address: [],
	colour: '#1f5f5b',
	clinician: { name: 'Imke Darrow', registration: 'DEMO-00417' },
}
const state = async (page: Page): Promise<string> =>
	((await called(page, 'call', 'session.status', {})) as { value: { state: string } }).value.state
async function unlocked(page: Page): Promise<void> {
	if ((await state(page)) !== 'open') await called(page, 'call', 'session.unlock', { passphrase })
	await (await theWindow()).loadURL(startUrl)
	await expect(page.getByRole('heading', { level: 1, name: 'Players' })).toBeVisible(patience)
	// what is drawn listens to keys after its next frame
	await page.evaluate(
		() => new Promise<void>((resolve) => requestAnimationFrame(() => setTimeout(resolve))),
	)
}
/** Has the page offer a file, as its own buttons do. */
const offer = (page: Page, name: string, type: string): Promise<void> =>
	page.evaluate(
		([download, of]) => {
			const link = document.createElement('a')
			link.href = URL.createObjectURL(new Blob(['%PDF-1.7'], { type: of }))
			link.download = download
			document.body.append(link)
			link.click()
			link.remove()
		},
		[name, type] as const,
	)
async function sleeps(event: 'suspend' | 'lock-screen'): Promise<void> {
	const page = await thePage()
	await unlocked(page)
	powerMonitor.emit(event)
	await expect(page.getByLabel('Passphrase', { exact: true })).toBeVisible(patience)
	expect(await state(page)).toBe('locked')
	// the shell locks once more by itself, so that whoever unlocks before is locked again
	await new Promise((resolve) => setTimeout(resolve, keepWithinMs * 1.5))
}

export const recordsChecks: Checks = {
	'sets up real records through the bridge': async () => {
		const page = await thePage()
		await called(page, 'call', 'session.setUp', { clinic, passphrase })
		await unlocked(page)
		expect(existsSync(join(folder, 'lastwright.db'))).toBe(true)
	},
	'has a menu that leads to every room': async () => {
		const page = await thePage()
		await unlocked(page)
		for (const [line, heading] of [
			['Shelf', 'Shelf'],
			['Outbox', 'Outbox'],
			['Players', 'Players'],
		] as const) {
			chooseInMenu(line)
			await expect(page.getByRole('heading', { level: 1, name: heading })).toBeVisible(patience)
		}
	},
	'has no line that would let a bystander in, and keys of known names': async () => {
		await theWindow()
		const roles = menuLines().map(({ role }) => role)
		for (const role of ['reload', 'forceReload', 'toggleDevTools'] as const)
			expect(roles).not.toContain(role)
		for (const { accelerator } of menuLines())
			expect(accelerator ?? 'none').toMatch(
				/^(?:none|(?:(?:CmdOrCtrl|Ctrl|Shift|Alt)\+)+(?:[A-Z0-9-]|Plus))$/,
			)
	},
	'makes letters larger and smaller': async () => {
		const { webContents } = await theWindow()
		for (const [line, zoom] of [
			['Larger text', 1.1],
			['Normal text', 1],
			['Smaller text', 0.9],
			['Normal text', 1],
		] as const) {
			chooseInMenu(line)
			expect(webContents.zoom).toBe(zoom)
		}
	},
	'prints the page by the dialog of the PC': async () => {
		await thePage()
		chooseInMenu('Print this page')
		expect(heard('print')).toEqual([{ printBackground: false }])
	},
	'locks from the menu': async () => {
		const page = await thePage()
		await unlocked(page)
		chooseInMenu('Lock the records')
		await expect(page.getByLabel('Passphrase', { exact: true })).toBeVisible(patience)
		expect(await state(page)).toBe('locked')
	},
	'locks when the PC sleeps': () => sleeps('suspend'),
	'locks when the screen of the PC is locked': () => sleeps('lock-screen'),
	'locks the records where the page does not answer': async () => {
		const page = await thePage()
		await unlocked(page)
		// keys reach nothing on it
		await page.evaluate(() =>
			addEventListener('keydown', (key) => key.stopImmediatePropagation(), true),
		)
		powerMonitor.emit('suspend')
		await expect.poll(() => state(page), patience).toBe('locked')
	},
	'saves a report under a plain name': async () => {
		const page = await thePage()
		const before = heard('download').length
		// the name of a device of some systems
		await offer(page, 'con.pdf', 'application/pdf')
		await expect.poll(() => heard('download').length, patience).toBe(before + 1)
		const saved = heard('download').at(-1) as { options: { defaultPath: string } }
		expect(saved).toMatchObject({ isStopped: false })
		expect(saved.options.defaultPath).toBe('file con.pdf')
	},
	'saves no program': async () => {
		const page = await thePage()
		const before = heard('download').length
		await offer(page, 'report.exe', 'application/octet-stream')
		await expect.poll(() => heard('download').length, patience).toBe(before + 1)
		expect(heard('download').at(-1)).toMatchObject({ isStopped: true, options: undefined })
	},
	'prints pages in a window that nobody sees, and they are gone': async () => {
		const page = await thePage()
		const pdf = Buffer.from('%PDF-1.7 pages').toString('base64')
		expect(await called(page, 'print', pdf)).toEqual({ printed: true, says: '' })
		const [shown] = heard('unseen') as { url: string; status: number; text: string }[]
		expect(shown).toMatchObject({ status: 200, type: 'application/pdf', text: '%PDF-1.7 pages' })
		expect(heard('print').at(-1)).toEqual({ silent: false })
		expect(heard('destroyed')).toHaveLength(1)
		const { pages } = (await theWindow()).webContents
		expect((await pages.answer(shown?.url ?? '', 'GET'))?.status).toBe(404)
	},
	'chooses a folder in the dialog of the system': async () => {
		const page = await thePage()
		await unlocked(page)
		answers.paths.push(folder, undefined)
		expect(await called(page, 'choose', 'reports')).toEqual({ ok: true, value: { path: folder } })
		expect(await called(page, 'choose', 'reports')).toEqual({ ok: true, value: {} })
		expect(heard('open dialog')[0]).toMatchObject({
			properties: ['openDirectory', 'createDirectory'],
		})
		expect(await called(page, 'choose', 'no such purpose')).toMatchObject({ ok: false })
		expect(heard('open dialog')).toHaveLength(2)
	},
}
