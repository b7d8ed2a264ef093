/**
 * The window shell, checked without its runtime: its source against the security list, its options
 * and tables, and the packaging against the fuse table.
 */
import { spawnSync } from 'node:child_process'
import { mkdtempSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, test } from 'vitest'
import { crashPage, reasonWords, stopsTooOften } from '../../electron/window/crash.ts'
import { kinds, saveAs } from '../../electron/window/downloads.ts'
import { fuses, readFuses, wrongFuses } from '../../electron/window/fuses.ts'
import { openOutside, safeLink } from '../../electron/window/links.ts'
import { menuTemplate, nextZoom, rooms } from '../../electron/window/menu.ts'
import {
	answerPage,
	isTrustedSender,
	mayHave,
	mayNavigate,
	mayRequest,
	permissions,
	startUrl,
	webPreferences,
} from '../../electron/window/security.ts'
import { firstState, keepState, placeOn, readState } from '../../electron/window/windowState.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(root, 'electron/window')
const withoutComments = (text: string) =>
	text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '')
const source = Object.fromEntries(
	readdirSync(folder)
		.filter((name) => name.endsWith('.ts'))
		.map((name) => [name, withoutComments(readFileSync(join(folder, name), 'utf8'))]),
)

/** What must never stand in the shell's source, each with the reason. */
const forbidden: [RegExp, string][] = [
	[/nodeIntegration\w*:\s*true/, 'the page gets no Node'],
	[/contextIsolation:\s*false/, 'the bridge stays apart from the page'],
	[/(?<!\w)sandbox:\s*false|no-sandbox/, 'every page is sandboxed'],
	[/webSecurity:\s*false/, 'the same-origin rule stays'],
	[
		/allowRunningInsecureContent:\s*true|experimentalFeatures:\s*true|enableBlinkFeatures|webviewTag:\s*true/,
		'no feature outside the plain web',
	],
	[
		/executeJavaScript|insertCSS|loadFile\(|['"`]file:/,
		'no code is pushed into the page and no page comes from a file',
	],
	[/\beval\(|new Function\(/, 'no text becomes code'],
	[
		/openDevTools|toggleDevTools|role:\s*'(?:reload|forceReload|toggleDevTools)'/,
		'no way round the lock',
	],
	[/autoUpdater|crashReporter\.start|electron-updater|https?:\/\//, 'nothing goes over a network'],
	[/@electron\/remote|enableRemoteModule/, 'no shell objects in the page'],
	[
		/\.startsWith\(\s*(?:startUrl|`\$\{scheme)/,
		'addresses are parsed, never compared by their start',
	],
]
/** The same source on one line, so that a pattern does not depend on where the formatter broke it. */
const onOneLine = (text: string) =>
	text
		.replace(/\s+/g, ' ')
		.replace(/,? ?([}\])])/g, (whole, close: string) =>
			whole.startsWith(',') ? ` ${close}` : whole,
		)
		.replace(/([[(]) /g, '$1')
		.replace(/ ([\])])/g, '$1')
/** @returns the reasons that a source breaks */
const broken = (text: string) =>
	forbidden.filter(([pattern]) => pattern.test(text)).map(([, why]) => why)
/** What must stand in main.ts, each the wiring of one line of the list. */
const wired: [string, RegExp][] = [
	['sandbox for all', /app\.enableSandbox\(\)/],
	[
		'own scheme',
		/registerSchemesAsPrivileged\(\[\{ scheme, privileges: \{ standard: true, secure: true, supportFetchAPI: true \} \}\]\)/,
	],
	['permission request', /setPermissionRequestHandler\(.{0,80}mayHave/],
	['permission check', /setPermissionCheckHandler\(.{0,80}mayHave/],
	['devices', /setDevicePermissionHandler\(\(\) => false\)/],
	['new windows', /action: 'deny'/],
	['navigation', /'will-navigate', \(event\) => \{ if \(!mayNavigate/],
	['redirect', /'will-redirect', \(event\) => event\.preventDefault/],
	['frames', /'will-frame-navigate', \(event\) => \{ if \(!mayNavigate/],
	['webview', /'will-attach-webview', \(event\) => event\.preventDefault/],
	['requests', /onBeforeRequest\(.{0,80}cancel: !mayRequest/],
	['downloads', /'will-download'[\s\S]*saveAs\([\s\S]*preventDefault/],
	['sender', /ipcMain\.handle\(callChannel[\s\S]{0,120}isTrustedSender\(event\.senderFrame\)/],
	['single instance', /requestSingleInstanceLock\(\)/],
	['guards on every contents', /'web-contents-created', \(_event, contents\) => guard\(contents\)/],
	['crash page', /'render-process-gone'/],
	['faults of the shell', /'uncaughtException', fail[\s\S]*'unhandledRejection', fail/],
]

describe('source', () => {
	it.each(Object.keys(source))('%s holds nothing forbidden', (name) =>
		expect(broken(source[name] ?? '')).toEqual([]),
	)
	it.each([
		['{ nodeIntegration: true }', 1],
		['{ contextIsolation: false }', 1],
		['{ sandbox: false }', 1],
		['{ webSecurity: false }', 1],
		["window.loadFile('x')", 1],
		["{ role: 'toggleDevTools' }", 1],
		['url.startsWith(startUrl)', 1],
		["fetch('https://example.org')", 1],
		['{ nodeIntegration: false, sandbox: true }', 0],
	])('the check itself sees %s', (text, count) => expect(broken(text)).toHaveLength(count))
	it.each(wired)('main.ts wires: %s', (_, pattern) =>
		expect(onOneLine(source['main.ts'] ?? '')).toMatch(pattern),
	)
	it('only main.ts opens addresses, and only through the wrapper; only one channel exists', () => {
		for (const [name, text] of Object.entries(source)) {
			expect(text.match(/openExternal\(/g)?.length ?? 0, name).toBe(name === 'main.ts' ? 1 : 0)
			expect(text.match(/ipcMain\.(?:on|handle\w*)\(/g)?.length ?? 0, name).toBe(
				name === 'main.ts' ? 1 : 0,
			)
			expect(text.match(/new BrowserWindow\(/g)?.length ?? 0, name).toBe(name === 'main.ts' ? 1 : 0)
		}
		expect(source['main.ts']).toMatch(
			/openOutside\(url, askOutside, \(link\) => shell\.openExternal\(link\)\)/,
		)
	})
	it('the bridge shows the page one function and never the messenger', () => {
		expect(source['preload.ts']?.match(/exposeInMainWorld\(/g)).toHaveLength(1)
		expect(source['preload.ts']?.match(/ipcRenderer\./g)).toHaveLength(1)
		expect(source['preload.ts']).not.toMatch(/\.on\(|send\(|:\s*ipcRenderer\s*[,}]/)
	})
})
describe('options and tables', () => {
	it('the window has no right it does not need', () => {
		expect(webPreferences('/p')).toEqual({
			preload: '/p',
			partition: 'lastwright',
			contextIsolation: true,
			sandbox: true,
			nodeIntegration: false,
			webSecurity: true,
			webviewTag: false,
			allowRunningInsecureContent: false,
			experimentalFeatures: false,
			navigateOnDragDrop: false,
			spellcheck: false,
			plugins: true,
		})
		expect(webPreferences('/p').partition).not.toMatch(/^persist:/)
	})
	const attacks = [
		'https://evil.example/',
		'http://app//lastwright/',
		'app://evil/',
		'app://lastwright.evil.example/',
		'app://lastwright@evil.example/',
		'app://evil.example/app://lastwright/',
		'file:///etc/passwd',
		'javascript:alert(1)',
		'data:text/html,x',
		'blob:https://evil.example/1',
		'blob:app://evil/1',
		'about:blank',
		'chrome://settings/',
		'chrome-extension://aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa/',
		'',
		'app:lastwright',
	]
	it.each(attacks)('nothing navigates to %j', (url) =>
		expect([
			mayNavigate(url, true, startUrl),
			mayNavigate(url, true, `${startUrl}stopped`),
			mayNavigate(url, false, startUrl),
		]).toEqual([false, false, false]),
	)
	it.each(attacks.filter((url) => !url.startsWith('data:')))('nothing is fetched from %j', (url) =>
		expect(mayRequest(url)).toBe(false),
	)
	it('the window stays where it is, save from the page of a stop back to the start', () => {
		expect([
			mayNavigate(startUrl, true, startUrl),
			mayNavigate(startUrl, true, `${startUrl}stopped`),
			mayNavigate(`${startUrl}x`, true, `${startUrl}stopped`),
			mayNavigate('blob:app://lastwright/1', false, startUrl),
		]).toEqual([false, true, false, true])
	})
	it('only our own top page may call', () => {
		expect([
			isTrustedSender(null),
			isTrustedSender({ url: startUrl, parent: {} }),
			isTrustedSender({ url: 'app://evil/', parent: null }),
			isTrustedSender({ url: `${startUrl}#/players`, parent: null }),
		]).toEqual([false, false, false, true])
	})
	it('every permission is denied but one, to every page but ours', () => {
		for (const [name, { allowed, why }] of Object.entries(permissions)) {
			expect(why.length, name).toBeGreaterThan(10)
			expect(mayHave(name, 'https://evil.example'), name).toBe(false)
			expect(mayHave(name, startUrl), name).toBe(allowed)
		}
		expect([
			mayHave('midi', startUrl),
			mayHave('toString', startUrl),
			Object.values(permissions).filter((one) => one.allowed),
		]).toEqual([false, false, [expect.anything()]])
	})
	it('each page has a policy with a nonce of its own', () => {
		const [one, two] = [
			answerPage(root, { method: 'GET', url: `${startUrl}stopped` }),
			answerPage(root, { method: 'GET', url: `${startUrl}stopped` }),
		]
		const nonce = (policy = '') => /'nonce-([^']+)'/.exec(policy)?.[1]
		expect(nonce(one.headers['content-security-policy'])).not.toBe(
			nonce(two.headers['content-security-policy']),
		)
		expect(Buffer.from(one.body ?? []).toString()).toContain(
			`nonce="${nonce(one.headers['content-security-policy'])}"`,
		)
		expect(one.headers['content-security-policy']).toMatch(/default-src 'none'; script-src 'self';/)
		expect(one.headers['content-security-policy']).not.toMatch(/unsafe|https?:|\*/)
	})
	it('the page of a stop speaks plainly, runs nothing and repeats nothing', () => {
		const page = crashPage('<script>', 'n')
		expect(page).not.toMatch(/<script|\son\w+=/i)
		expect(page).toContain('The reason is not known')
		expect(page).toContain('href="/"')
		for (const reason of ['oom', 'killed', 'crashed']) expect(reasonWords(reason)).toMatch(/\.$/)
		expect([
			stopsTooOften([1, 2], 3),
			stopsTooOften([1, 2, 3], 4),
			stopsTooOften([1, 2, 3], 100_000),
		]).toEqual([false, true, false])
	})
})
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
				/fileName(?:: |Of = [^'`\n]*=> )['`][^'`\n]*\.(\w+)['`]/g,
			),
			saved = endingsIn('renderer/screens', /\bsave(?:Text|Bytes)\(.*?['`][\w-]+\.(\w+)['`]/g)
		expect(made).toEqual(expect.arrayContaining(['pdf', 'html', 'eml', 'ics']))
		expect(saved).toContain('csv')
		for (const ending of [...made, ...saved]) expect(Object.keys(kinds)).toContain(ending)
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
describe('packaging', () => {
	/** Just the plain form this file is written in: maps by two spaces, lists of words. */
	function readYaml(text: string): Record<string, unknown> {
		const top: Record<string, unknown> = {}
		const stack: { indent: number; into: Record<string, unknown> | string[] }[] = [
			{ indent: -1, into: top },
		]
		const lines = text
			.split('\n')
			.filter((line) => line.trim() !== '' && !line.trim().startsWith('#'))
		for (const [at, line] of lines.entries()) {
			const indent = line.search(/\S/)
			while (indent <= stack.at(-1)!.indent) stack.pop()
			const { into } = stack.at(-1)!
			const item = /^\s*- "?(.*?)"?$/.exec(line)
			if (item) {
				;(into as string[]).push(item[1]!)
				continue
			}
			const [, key, value] = /^\s*(\w+):\s*(.*)$/.exec(line) ?? []
			if (key === undefined || Array.isArray(into)) throw new Error(`not read: ${line}`)
			if (value)
				into[key] =
					value === 'true' ? true : value === 'false' ? false : value === 'null' ? null : value
			else {
				const child: Record<string, unknown> | string[] = lines[at + 1]?.trim().startsWith('- ')
					? []
					: {}
				into[key] = child
				stack.push({ indent, into: child })
			}
		}
		return top
	}
	const builder = readYaml(readFileSync(join(root, 'electron-builder.yml'), 'utf8'))
	it('sets every fuse of the table and no other', () => {
		const wanted = Object.fromEntries(
			Object.values(fuses).flatMap((fuse) => (fuse.builder ? [[fuse.builder, fuse.on]] : [])),
		)
		expect(builder.electronFuses).toEqual(wanted)
		expect(new Set(Object.values(fuses).map((fuse) => fuse.at)).size).toBe(
			Object.keys(fuses).length,
		)
	})
	it('makes what each system needs, from an archive, with the entry in it and nothing published', () => {
		expect(builder).toMatchObject({
			appId: 'org.example.lastwright',
			productName: 'Lastwright',
			asar: true,
			publish: null,
			win: { target: ['nsis'] },
			mac: { target: ['dmg', 'zip'] },
			linux: { target: ['AppImage', 'deb'] },
			nsis: { deleteAppDataOnUninstall: false },
		})
		const main = (builder.extraMetadata as { main: string }).main
		expect(readFileSync(join(root, main), 'utf8')).toContain('app.enableSandbox()')
		expect(builder.files).toEqual(
			expect.arrayContaining([
				'electron/**/*',
				'shared/**/*',
				'build/renderer/**/*',
				'package.json',
			]),
		)
		expect((builder.files as string[]).join(' ')).not.toMatch(/tests|\.env/)
	})
	const order = Object.values(fuses).toSorted((a, b) => a.at - b.at)
	const wire = (states: string) =>
		Buffer.concat([
			Buffer.from('before dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1'),
			Buffer.from([1, states.length]),
			Buffer.from(states, 'latin1'),
			Buffer.from('after'),
		])
	const right = order.map((fuse) => (fuse.on ? '1' : '0')).join('')
	it('reads the wire back, one for each processor', () => {
		expect(wrongFuses(readFuses(wire(right)))).toEqual([])
		expect(readFuses(Buffer.concat([wire(right), wire(right)]))).toHaveLength(2)
		expect(() => readFuses(Buffer.from('no wire here'))).toThrow(/No fuse wire/)
		expect(() =>
			readFuses(
				Buffer.concat([Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX'), Buffer.from([2, 1, 0x31])]),
			),
		).toThrow(/version 2/)
		expect(() => readFuses(wire(right).subarray(0, 42))).toThrow(/only version 1/)
	})
	it.each(order.map((fuse, at) => [at, fuse.why] as const))(
		'a wrong fuse %d is named with its reason',
		(at, why) => {
			const wrong = right.slice(0, at) + (right[at] === '1' ? '0' : '1') + right.slice(at + 1)
			expect(wrongFuses(readFuses(wire(wrong)))).toEqual([expect.stringContaining(why)])
		},
	)
	it('a fuse that is missing, taken out or unknown is named', () => {
		expect(wrongFuses(readFuses(wire(right.slice(0, 5))))).toHaveLength(3)
		expect(wrongFuses(readFuses(wire(`r${right.slice(1)}`)))).toEqual([
			expect.stringContaining('is removed'),
		])
		expect(wrongFuses(readFuses(wire(`${right}1`)))).toEqual([
			expect.stringContaining('fuse 9: is on'),
		])
	})
	it('the read-back command ends with 0, 1 or 2', () => {
		const here = mkdtempSync(join(tmpdir(), 'lastwright-fuses-'))
		const run = (...args: string[]) =>
			spawnSync(
				process.execPath,
				['--disable-warning=ExperimentalWarning', join(folder, 'read-fuses.ts'), ...args],
				{ encoding: 'utf8' },
			)
		writeFileSync(join(here, 'good'), wire(right))
		writeFileSync(join(here, 'bad'), wire(`1${right.slice(1)}`))
		expect([
			run(join(here, 'good')).status,
			run(join(here, 'bad')).status,
			run(join(here, 'none')).status,
			run(here).status,
			run().status,
		]).toEqual([0, 1, 2, 2, 2])
	})
	const installed = join(
		root,
		'node_modules/electron/dist',
		process.platform === 'win32' ? 'electron.exe' : 'electron',
	)
	test.skipIf(
		process.platform === 'darwin' ||
			!readdirSync(join(root, 'node_modules/electron')).includes('dist'),
	)("the runtime's own wire can be read", () =>
		expect(readFuses(readFileSync(installed))[0]?.length).toBeGreaterThanOrEqual(8),
	)
})
