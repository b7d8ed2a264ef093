import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { crashPage, reasonWords, stopsTooOften } from '../../electron/window/crash.ts'
import { Paper } from '../../electron/window/paper.ts'
import {
	answerPage,
	callChannel,
	chooseChannel,
	isTrustedSender,
	mayHave,
	mayNavigate,
	mayRequest,
	permissions,
	printChannel,
	startUrl,
	webPreferences,
} from '../../electron/window/security.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const folder = join(root, 'electron/window')
const withoutComments = (text: string) =>
	text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/^\s*\/\/.*$/gm, '')
const source = Object.fromEntries(
	readdirSync(folder)
		.filter((name) => /\.c?[jt]s$/.test(name))
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
/**
 * The same source on one line, so that a pattern does not depend on where the formatter broke it.
 */
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
	[
		'sender of pages',
		/ipcMain\.handle\(printChannel[\s\S]{0,120}isTrustedSender\(event\.senderFrame\)/,
	],
	[
		'unseen window',
		/show: false, webPreferences: preferences \}\)[\s\S]*finally \{ shown\.destroy\(\)/,
	],
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
	it('only main.ts opens addresses, and only through the wrapper; only three channels exist', () => {
		for (const [name, text] of Object.entries(source)) {
			expect(text.match(/openExternal\(/g)?.length ?? 0, name).toBe(name === 'main.ts' ? 1 : 0)
			expect(text.match(/ipcMain\.(?:on|handle\w*)\(/g)?.length ?? 0, name).toBe(
				name === 'main.ts' ? 3 : 0,
			)
			expect(text.match(/new BrowserWindow\(/g)?.length ?? 0, name).toBe(name === 'main.ts' ? 2 : 0)
		}
		expect(source['main.ts']).toMatch(
			/openOutside\(url, askOutside, \(link\) => shell\.openExternal\(link\)\)/,
		)
	})
	it('the bridge shows the page three functions and never the messenger', () => {
		expect(source['preload.cjs']?.match(/exposeInMainWorld\(/g)).toHaveLength(1)
		expect(source['preload.cjs']?.match(/ipcRenderer\./g)).toHaveLength(3)
		expect(source['preload.cjs']).toContain(`invoke('${callChannel}', name, input)`)
		expect(source['preload.cjs']).toContain(`invoke('${printChannel}', base64)`)
		expect(source['preload.cjs']).toContain(`invoke('${chooseChannel}', purpose)`)
		expect(source['preload.cjs']).not.toMatch(/\.on\(|send\(|:\s*ipcRenderer\s*[,}]/)
	})
})
it('the bridge is read from the package, and no file of the shell is made at start', () => {
	expect(source['main.ts']).toContain("new URL('./preload.cjs', import.meta.url)")
	expect(source['main.ts']).not.toMatch(/tmpdir|mkdtemp|writeFile|stripTypeScriptTypes/)
	expect(readFileSync(join(root, 'electron-builder.yml'), 'utf8')).toMatch(/- electron\/\*\*\/\*/)
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
			devTools: false,
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
			mayNavigate(`${startUrl}paper/1.pdf`, false, startUrl),
			mayNavigate(`${startUrl}paper/1.pdf`, true, startUrl),
			mayNavigate('app://evil/paper/1.pdf', false, startUrl),
		]).toEqual([false, true, false, true, true, false, false])
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
			Object.values(permissions).filter((permission) => permission.allowed),
		]).toEqual([false, false, [expect.anything()]])
	})
	it('each page has a policy with a nonce of its own', () => {
		const [first, second] = [
			answerPage(root, { method: 'GET', url: `${startUrl}stopped` }),
			answerPage(root, { method: 'GET', url: `${startUrl}stopped` }),
		]
		const nonce = (policy = '') => /'nonce-([^']+)'/.exec(policy)?.[1]
		expect(nonce(first.headers['content-security-policy'])).not.toBe(
			nonce(second.headers['content-security-policy']),
		)
		expect(Buffer.from(first.body ?? []).toString()).toContain(
			`nonce="${nonce(first.headers['content-security-policy'])}"`,
		)
		expect(first.headers['content-security-policy']).toMatch(
			/default-src 'none'; script-src 'self';/,
		)
		expect(first.headers['content-security-policy']).not.toMatch(/unsafe|https?:|\*/)
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
describe('paper', () => {
	const pdf = Buffer.from('%PDF-1.7 pages').toString('base64')
	const bench = (how: { success: boolean; reason: string } | Error) => {
		const seen: { path: string; bytes: string }[] = []
		const paper: Paper = new Paper((path) => {
			seen.push({ path, bytes: Buffer.from(paper.at(path) ?? []).toString() })
			return how instanceof Error ? Promise.reject(how) : Promise.resolve(how)
		})
		return { paper, seen }
	}
	it('has an address for as long as it is printed, another one each time', async () => {
		const { paper, seen } = bench({ success: true, reason: '' })
		expect(await paper.print(pdf)).toEqual({ printed: true, says: '' })
		await paper.print(pdf)
		expect(seen.map(({ bytes }) => bytes)).toEqual(['%PDF-1.7 pages', '%PDF-1.7 pages'])
		expect(new Set(seen.map(({ path }) => path)).size).toBe(2)
		for (const { path } of seen) {
			expect(paper.at(path)).toBeUndefined()
			expect(path).toMatch(/^\/paper\/[0-9a-f]{32}\.pdf$/)
		}
	})
	it('what is no PDF is shown nowhere; a printer that fails is said, leaving the dialog is not', async () => {
		const { paper, seen } = bench({ success: true, reason: '' })
		for (const wrong of [undefined, 7, '', 'PCFET0NUWVBFIGh0bWw+', {}])
			expect(await paper.print(wrong)).toMatchObject({
				printed: false,
				says: expect.stringContaining('no pages that can be printed'),
			})
		expect(seen).toEqual([])
		const left = await bench({ success: false, reason: 'Print job canceled' }).paper.print(pdf)
		expect(left).toEqual({ printed: false, says: '' })
		const failed = [{ success: false, reason: 'Print job failed' }, new Error('ERR_ABORTED')]
		for (const how of failed)
			expect(await bench(how).paper.print(pdf)).toMatchObject({
				printed: false,
				says: expect.stringContaining('The printer could not be reached.'),
			})
	})
})
