/**
 * The start command with the window it opens: real processes, a browser of our own that only waits.
 */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { chmodSync, existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, expect, it } from 'vitest'
import { createApp } from '../../electron/app.ts'

const main = fileURLToPath(new URL('../../electron/command/main.ts', import.meta.url))
const running: (() => void)[] = []
afterEach(() => {
	for (const end of running.splice(0)) end()
})

/** @returns the process, what it says, and how it ends */
function start(args: string[], more: NodeJS.ProcessEnv = {}) {
	const child: ChildProcess = spawn(
		process.execPath,
		['--disable-warning=ExperimentalWarning', main, 'start', ...args],
		{ stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...more } },
	)
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
it('the address is there before the records are, and its first call waits for them', async () => {
	const { said } = start(['--no-window', '--demo'])
	const url = await expect
		.poll(() => address.exec(said.out)?.[0])
		.toBeTruthy()
		.then(() => address.exec(said.out)?.[0] ?? '')
	expect(await (await visitor(url))('session.status')).toMatchObject({
		ok: true,
		value: { state: 'open' },
	})
})
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
				message: expect.stringContaining('already open in another Lastwright'),
			})
		expect(child.exitCode).toBeNull()
		child.kill('SIGTERM')
		expect(await ended).toBe(1)
		expect(said.err).toContain('already open in another Lastwright')
	},
)
