/**
 * Opens the workstation: Electron where its runtime is installed, otherwise the loopback window,
 * saying so.
 */
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join } from 'node:path'
import { setImmediate } from 'node:timers/promises'
import type { App } from '../app.ts'
import { endWindow, findBrowser, hasDisplay, openAppWindow } from '../loopback/browser.ts'
import { openLoopback } from '../loopback/server.ts'
import { placeOf } from '../place.ts'

const tell = (text: string) => process.stdout.write(`${text}\n`)

function defaultDataFolder(): string {
	if (process.platform === 'win32')
		return join(process.env.APPDATA ?? join(homedir(), 'AppData/Roaming'), 'Lastwright')
	if (process.platform === 'darwin')
		return join(homedir(), 'Library/Application Support/Lastwright')
	return join(process.env.XDG_DATA_HOME ?? join(homedir(), '.local/share'), 'lastwright')
}
function electronRuntime(): string | undefined {
	const pathFile = placeOf('node_modules/electron/path.txt')
	if (!existsSync(pathFile)) return undefined
	const file = join(placeOf('node_modules/electron/dist'), readFileSync(pathFile, 'utf8').trim())
	return existsSync(file) ? file : undefined
}
export interface StartOptions {
	demo: boolean
	/** ISO date on which the demo is told; today where absent */
	day?: string | undefined
	/** the demo with those who were seen again */
	isFull: boolean
	noWindow: boolean
	dataFolder?: string | undefined
	/** a free one where absent */
	port?: number | undefined
}

/** How long a window that was told to close may take; common practice, no source. */
const windowEndsMs = 2000
/** The records, or why there are none. */
type Opened = { app: App } | { error: unknown; message: string }

/**
 * Reads the host's modules in parts, so that the window's first requests are answered between them,
 * then opens the records.
 */
async function openedBehind(records: {
	dataFolder: string
	demo: boolean
	day?: string | undefined
	isFull: boolean
	tell: (text: string) => void
}): Promise<Opened> {
	try {
		for (const part of [
			() => import('zod'),
			() => import('../../shared/contract.ts'),
			() => import('../../shared/engine/assess.ts'),
			() => import('../app.ts'),
		]) {
			await part()
			await setImmediate()
		}
		const { openWorkstation } = await import('./workstation.ts')
		return { app: await openWorkstation(records) }
	} catch (error) {
		return { error, message: error instanceof Error ? error.message : String(error) }
	}
}

/**
 * Resolves when the program is told to end. Told once more, it stays with ending: a terminal and
 * whoever started this may both say it.
 */
function toldToEnd(): Promise<void> {
	return new Promise((resolve) => {
		for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const)
			process.on(signal, () => resolve())
	})
}
/** Opens the workstation. Ends when its window is closed, or when the program is told to end. */
export async function start(options: StartOptions): Promise<void> {
	const told = toldToEnd()
	const runtime = electronRuntime()
	if (runtime && !options.noWindow && !options.demo) return startElectron(runtime, options, told)
	if (!options.noWindow && !runtime)
		tell(
			"Electron's runtime is not installed here: Lastwright opens the same screens in a browser " +
				'window instead.',
		)
	await startLoopback(options, told)
	process.exit(0)
}
async function startElectron(
	runtime: string,
	options: StartOptions,
	told: Promise<void>,
): Promise<void> {
	tell('Opening Lastwright in Electron.')
	const child = spawn(runtime, [placeOf('electron/window/main.ts')], {
		stdio: 'inherit',
		env: { ...process.env, LASTWRIGHT_DATA: options.dataFolder ?? defaultDataFolder() },
	})
	void told.then(() => child.kill())
	await new Promise<void>((resolve) => child.once('exit', () => resolve()))
}
/** The window comes first, and waits for the records; both end together. */
async function startLoopback(options: StartOptions, told: Promise<void>): Promise<void> {
	const { promise: opened, resolve: open } = Promise.withResolvers<Opened>()
	const loopback = await openLoopback(
		{
			call: async (name, input) => {
				const records = await opened
				return 'app' in records
					? records.app.call(name, input)
					: { ok: false, code: 'records.store', message: records.message }
			},
		},
		{ port: options.port },
	)
	const browser = options.noWindow || !hasDisplay() ? undefined : findBrowser()
	const window = browser ? openWindow(browser, loopback.url) : undefined
	tell(
		browser
			? `Window: ${browser}`
			: `Open this address in a browser on this PC (it works once): ${loopback.url}`,
	)
	const scratch = options.demo ? mkdtempSync(join(tmpdir(), 'lastwright-demo-')) : undefined
	const dataFolder = scratch ?? options.dataFolder ?? defaultDataFolder()
	const { demo, day, isFull } = options
	open(openedBehind({ dataFolder, demo, day, isFull, tell }))
	const records = await opened
	// a window says itself why there are no records; it stays until it was read
	if (window) await Promise.race([window.closed, told])
	else if ('app' in records) await told
	await window?.end()
	await loopback.close()
	if ('app' in records) records.app.close()
	if (scratch) rmSync(scratch, { recursive: true, force: true })
	if ('error' in records) throw records.error
}
interface AppWindow {
	/** resolves when the window is gone */
	closed: Promise<void>
	/** Closes it, and does not return before it is gone. */
	end: () => Promise<void>
}
function openWindow(browser: string, url: string): AppWindow {
	const child = openAppWindow(browser, url)
	child.once('error', () =>
		tell(`The window could not be opened. Open this address in a browser on this PC: ${url}`),
	)
	const closed = new Promise<void>((resolve) => child.once('exit', () => resolve()))
	return {
		closed,
		end: async () => {
			// one that never opened has nothing to close
			if (child.pid === undefined) return
			endWindow(child, 'SIGTERM')
			const late = setTimeout(() => endWindow(child, 'SIGKILL'), windowEndsMs)
			await closed
			clearTimeout(late)
		},
	}
}
