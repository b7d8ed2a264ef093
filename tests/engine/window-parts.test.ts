import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { kinds, saveAs } from '../../electron/window/downloads.ts'
import { openOutside, safeLink } from '../../electron/window/links.ts'
import { menuTemplate, nextZoom, rooms } from '../../electron/window/menu.ts'
import { firstState, keepState, placeOn, readState } from '../../electron/window/windowState.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))

describe('links that lead outside', () => {
	it.each([
		'http://doi.org/10.1/x',
		'https://evil.example/',
		'https://doi.org.evil.example/',
		'https://evil.example/https://doi.org/',
		'https://user@doi.org/',
		'https://doi.org:8443/',
		'file:///x',
		'mailto:a@example.org',
		'javascript:1',
		'doi.org',
		'',
		'https://toString/',
	])('%j is refused, unasked', async (url) => {
		const opened: string[] = []
		expect(
			await openOutside(
				url,
				async () => {
					opened.push('asked')
					return true
				},
				async (link) => {
					opened.push(link)
				},
			),
		).toBe(false)
		expect(opened).toEqual([])
	})
	it('a source is opened once the person said so, and not otherwise', async () => {
		const opened: string[] = []
		const open = async (link: string) => {
			opened.push(link)
		}
		expect(safeLink('https://doi.org/10.1/x')).toBe('https://doi.org/10.1/x')
		expect(await openOutside('https://doi.org/10.1/x', async () => false, open)).toBe(false)
		expect(await openOutside('https://doi.org/10.1/x', async () => true, open)).toBe(true)
		expect(opened).toEqual(['https://doi.org/10.1/x'])
	})
})
describe('downloads', () => {
	const ours = 'blob:app://lastwright/1'
	it.each([
		['https://evil.example/a.pdf', 'a.pdf', 1],
		['blob:https://evil.example/1', 'a.pdf', 1],
		[ours, 'a.exe', 1],
		[ours, 'a.pdf.exe', 1],
		[ours, 'a', 1],
		[ours, '', 1],
		[ours, 'a.toString', 1],
		[ours, 'a.pdf', 201 * 1024 * 1024],
	])('%s named %j with %d bytes is refused', (url, name, bytes) =>
		expect(saveAs(url, name, bytes)).toBeUndefined(),
	)
	it.each([
		['../../etc/report.pdf', 'report.pdf'],
		['..\\..\\report.pdf', 'report.pdf'],
		['.report.PDF', 'report.pdf'],
		['con.csv', 'file con.csv'],
		['a\u202efdp.csv', 'afdp.csv'],
		['a:b|c.ics', 'abc.ics'],
		['.pdf ', undefined],
		['Zoë visit.pdf', 'Zoë visit.pdf'],
		[`${'x'.repeat(400)}.pdf`, `${'x'.repeat(120)}.pdf`],
	])('%j is offered as %j', (name, offered) => expect(saveAs(ours, name, 1)?.name).toBe(offered))
	it('knows every kind the host makes and the screens save', () => {
		const endingsIn = (folder: string, pattern: RegExp) =>
			readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
				.filter((name) => /\.tsx?$/.test(name))
				.flatMap((name) =>
					[...readFileSync(join(root, folder, name), 'utf8').matchAll(pattern)].map(
						(found) => found[1] ?? '',
					),
				)
		const made = endingsIn(
				'electron/services',
				// a file is offered as what it is, its day, its version
				/['`](?:[\w-]|\$\{[^}\n]*\})*\.(pdf|html|eml|ics|csv|lwpack)['`]/g,
			),
			saved = endingsIn('renderer/screens', /\bsave(?:Text|Bytes)\(.*?['`][\w-]+\.(\w+)['`]/g)
		expect(made).toEqual(expect.arrayContaining(['pdf', 'html', 'eml', 'ics']))
		expect(saved).toContain('csv')
		for (const ending of [...made, ...saved].filter((one) => one !== 'lwpack'))
			expect(Object.keys(kinds)).toContain(ending)
	})
})
describe('the place of the window', () => {
	const desk = [{ x: 0, y: 0, width: 1920, height: 1040 }]
	const state = { ...firstState, x: 100, y: 50 }
	it('comes back where it was', () => expect(placeOn(state, desk)).toEqual(state))
	it.each([
		['on a screen that is gone', { x: 3000 }],
		['above every screen', { y: -400 }],
		['nearly past the edge', { x: 1900 }],
		['below', { y: 1030 }],
	])('is centred when it stood %s', (_, change) => {
		expect(placeOn({ ...state, ...change }, desk)).not.toHaveProperty('x')
	})
	it('shrinks to the screen and not below what is usable', () =>
		expect([
			placeOn({ ...state, width: 5000, height: 5000 }, desk),
			placeOn({ ...state, width: 10, height: 10 }, desk),
		]).toMatchObject([
			{ width: 1920, height: 1040 },
			{ width: 1024, height: 700 },
		]))
	it('is kept whole and read whole, or not at all', () => {
		const file = join(mkdtempSync(join(tmpdir(), 'lastwright-place-')), 'place.json')
		keepState(file, { ...state, zoom: 1.5 })
		expect(readState(file)).toEqual({ ...state, zoom: 1.5 })
		for (const text of [
			'',
			'{',
			'{"width":1}',
			JSON.stringify({ ...state, zoom: 50 }),
			JSON.stringify({ ...state, player: 'a name' }),
		]) {
			writeFileSync(file, text)
			expect(readState(file), text).toEqual(firstState)
		}
	})
})
describe('the menu', () => {
	const went: string[] = []
	const does = {
		go: (room: string) => went.push(room),
		lock: () => went.push('lock'),
		zoom: (step: number) => went.push(`zoom ${step}`),
		print: () => went.push('print'),
	}
	const lines = (platform: NodeJS.Platform) =>
		menuTemplate(does, platform).flatMap((top) => (Array.isArray(top.submenu) ? top.submenu : []))
	it.each(['win32', 'darwin', 'linux'] as const)(
		'on %s every line of ours has keys of its own and does its work',
		(platform) => {
			const own = lines(platform).filter((line) => line.click)
			const keys = own.map((line) => String(line.accelerator))
			expect([keys.includes('undefined'), new Set(keys).size]).toEqual([false, keys.length])
			went.length = 0
			for (const line of own) line.click?.({} as never, undefined, {} as never)
			expect(went).toEqual([
				'print',
				'lock',
				...rooms.map(([, room]) => room),
				'zoom 1',
				'zoom -1',
				'zoom 0',
			])
		},
	)
	it('letters grow to 200 % and beyond, shrink, and come back', () => {
		let now = 1
		for (let press = 0; press < 5; press++) now = nextZoom(now, 1)
		expect([now, nextZoom(3, 1), nextZoom(0.75, -1), nextZoom(now, 0), nextZoom(1.05, -1)]).toEqual(
			[2, 3, 0.75, 1, 1],
		)
	})
})
