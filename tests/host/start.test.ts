/**
 * The start command with the window it opens: real processes, a browser of our own that only waits.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import {
	chmodSync,
	copyFileSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readdirSync,
	readFileSync,
	symlinkSync,
	writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { dirname, join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, describe, expect, it } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { demoDay } from '../demo.ts'

const main = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const prepare = fileURLToPath(new URL('../../electron/command/prepare.mjs', import.meta.url))
/** A demo that nobody opened yet is filled first. */
const demoFillsMs = 180_000
const running: (() => void)[] = []
afterEach(() => {
	for (const end of running.splice(0)) end()
})

/** @returns the process, what it says, and how it ends with all that writes where it does */
function run(command: string, args: string[], env: NodeJS.ProcessEnv, folder?: string) {
	const child: ChildProcess = spawn(command, args, {
		stdio: ['ignore', 'pipe', 'pipe'],
		env: { ...process.env, ...env },
		cwd: folder,
	})
	running.push(() => {
		child.kill('SIGKILL')
	})
	const said = { out: '', err: '' }
	child.stdout?.on('data', (part) => {
		said.out += String(part)
	})
	child.stderr?.on('data', (part) => {
		said.err += String(part)
	})
	return { child, said, ended: once(child, 'close').then(([code]) => code as number | null) }
}
const start = (args: string[], env: NodeJS.ProcessEnv = {}) =>
	run(process.execPath, ['--disable-warning=ExperimentalWarning', main, 'start', ...args], env)
/** A folder whose records this process holds open. */
function held(): string {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-start-'))
	const app = createApp({
		dataFolder: folder,
		renderPdf: async () => {
			throw new Error('no report is drawn here')
		},
	})
	running.push(() => app.close())
	return folder
}
/** A browser that writes down what it was told to open, and waits. */
function waitingBrowser(): { file: string; told: () => string | undefined } {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-browser-')),
		file = join(folder, 'browser'),
		note = join(folder, 'told')
	writeFileSync(
		file,
		`#!/bin/sh\necho "$1" > "${note}.part"\nmv "${note}.part" "${note}"\nexec sleep 60\n`,
	)
	chmodSync(file, 0o755)
	return {
		file,
		told: () =>
			existsSync(note) ? /file:\/\/\S+/.exec(readFileSync(note, 'utf8'))?.[0] : undefined,
	}
}
/** Opens the address as the window would. @returns what calls one thing of the host */
async function visitor(url: string) {
	const entry = await fetch(url, { redirect: 'manual' })
	const cookie = (entry.headers.get('set-cookie') ?? '').split(';')[0] ?? ''
	return async (name: string) =>
		(
			await fetch(new URL(`/call/${name}`, url), {
				method: 'POST',
				headers: { cookie, origin: new URL(url).origin, 'content-type': 'application/json' },
				body: '{}',
			})
		).json() as Promise<{ ok: boolean; message?: string; value?: { state: string } }>
}
const address = /http:\/\/127\.0\.0\.1:\d+\/\?t=[\w-]+/

it('without a window: records open elsewhere end it with one line that says so', async () => {
	const { said, ended } = start(['--no-window', '--data', held()])
	expect(await ended).toBe(1)
	expect(said.err).toMatch(
		/^lastwright: The records in this folder are already open in another Lastwright \(process \d+\)\. Close it first, or use its window\.\n$/,
	)
})
it(
	'the address is there before the records are, and its first call waits for them',
	async () => {
		const { said } = start(['--no-window', '--demo', '--day', demoDay])
		const url = await expect
			.poll(() => address.exec(said.out)?.[0])
			.toBeTruthy()
			.then(() => address.exec(said.out)?.[0] ?? '')
		expect(await (await visitor(url))('session.status')).toMatchObject({
			ok: true,
			value: { state: 'open' },
		})
	},
	demoFillsMs,
)
it.skipIf(process.platform === 'win32')(
	'a window says why there are no records, and stays until it is closed',
	async () => {
		const browser = waitingBrowser()
		const { child, said, ended } = start(['--data', held()], {
			LASTWRIGHT_BROWSER: browser.file,
			DISPLAY: ':0',
		})
		await expect.poll(browser.told).toBeTruthy()
		const url = address.exec(readFileSync(new URL(browser.told() ?? ''), 'utf8'))?.[0] ?? ''
		const ask = await visitor(url)
		for (const name of ['session.status', 'players.search'])
			expect(await ask(name)).toMatchObject({
				ok: false,
				code: 'records.store',
			})
		expect(child.exitCode).toBeNull()
		child.kill('SIGTERM')
		expect(await ended).toBe(1)
		expect(said.err).toContain('already open in another Lastwright')
	},
)

/** A folder in which `npm start` finds everything installed and built, and runs this program. */
function installed(): string {
	const folder = mkdtempSync(join(tmpdir(), 'lastwright-installed-'))
	const write = (name: string, text: string) => {
		mkdirSync(dirname(join(folder, name)), { recursive: true })
		writeFileSync(join(folder, name), text)
	}
	const scripts = { start: 'node electron/command/prepare.mjs start' }
	write('package.json', JSON.stringify({ type: 'module', scripts }))
	mkdirSync(join(folder, 'electron/command'), { recursive: true })
	copyFileSync(prepare, join(folder, 'electron/command/prepare.mjs'))
	write('build/program/main.js', `await import(${JSON.stringify(main)})`)
	write('build/renderer/index.html', '')
	write('node_modules/.package-lock.json', '')
	mkdirSync(join(folder, 'node_modules/node/bin'), { recursive: true })
	symlinkSync(process.execPath, join(folder, 'node_modules/node/bin/node'))
	return folder
}
/** A browser that writes down its own process and one that it starts, and waits for that one. */
function browserOfTwo(folder: string): { file: string; processes: () => number[] } {
	const file = join(folder, 'browser')
	const note = join(folder, 'processes')
	writeFileSync(
		file,
		`#!/bin/sh\nsleep 600 &\necho $$ $! > "${note}.part"\nmv "${note}.part" "${note}"\nwait\n`,
	)
	chmodSync(file, 0o755)
	return {
		file,
		processes: () =>
			existsSync(note) ? readFileSync(note, 'utf8').trim().split(' ').map(Number) : [],
	}
}
/** One that ended and whose end nobody asked for yet does not run any more. */
function isRunning(processId: number): boolean {
	try {
		process.kill(processId, 0)
		const stat = `/proc/${processId}/stat`
		return !existsSync(stat) || !/\) Z /.test(readFileSync(stat, 'utf8'))
	} catch {
		return false
	}
}
describe.skipIf(process.platform === 'win32').each([
	['npm', 'npm', ['start', '--silent', '--', '--demo', '--day', demoDay]],
	['what npm runs', 'node', ['electron/command/prepare.mjs', 'start', '--demo', '--day', demoDay]],
])('%s, told to end,', (_, command, args) => {
	it(
		'ends host and window, and leaves no process and no folder',
		async () => {
			const folder = installed()
			const scratch = join(folder, 'scratch')
			mkdirSync(scratch)
			const browser = browserOfTwo(folder)
			const { child, said, ended } = run(
				command,
				args,
				{ TMPDIR: scratch, LASTWRIGHT_BROWSER: browser.file, DISPLAY: ':0', CI: '1' },
				folder,
			)
			await expect.poll(browser.processes).toHaveLength(2)
			await expect
				.poll(() => said.out, { timeout: demoFillsMs })
				.toContain('Demo: an invented clinic')
			const own = () => readdirSync(scratch).filter((name) => name.startsWith('lastwright-'))
			expect(own()).toHaveLength(2)
			child.kill('SIGTERM')
			await ended
			await expect.poll(() => browser.processes().filter(isRunning)).toEqual([])
			expect(own()).toEqual([])
			expect(said.err).toBe('')
		},
		demoFillsMs,
	)
})
