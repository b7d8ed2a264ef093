/** Opens the workstation: Electron where its runtime is installed, otherwise the loopback window, saying so. */
import { spawn } from 'node:child_process'
import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { homedir, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { createApp } from '../app.ts'
import { demoPassphrase } from '../demo.ts'
import { findBrowser, hasDisplay, openAppWindow } from '../loopback/browser.ts'
import { openLoopback } from '../loopback/server.ts'
import { renderPdf, warmPdf } from '../pdf/render.ts'
import { openDemo } from './demo-records.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
/** By then the window stands; a choice of this program. */
const warmAfterMs = 4000
const tell = (text: string) => process.stdout.write(`${text}\n`)

export function defaultDataFolder(): string {
	if (process.platform === 'win32') return join(process.env.APPDATA ?? join(homedir(), 'AppData/Roaming'), 'Lastwright')
	if (process.platform === 'darwin') return join(homedir(), 'Library/Application Support/Lastwright')
	return join(process.env.XDG_DATA_HOME ?? join(homedir(), '.local/share'), 'lastwright')
}
function electronRuntime(): string | undefined {
	const pathFile = join(root, 'node_modules/electron/path.txt')
	if (!existsSync(pathFile)) return undefined
	const file = join(root, 'node_modules/electron/dist', readFileSync(pathFile, 'utf8').trim())
	return existsSync(file) ? file : undefined
}
export interface StartOptions { demo: boolean; noWindow: boolean; dataFolder?: string; port?: number }

export async function start(options: StartOptions): Promise<void> {
	const runtime = electronRuntime()
	if (runtime && !options.noWindow && !options.demo) {
		tell('Opening Lastwright in Electron.')
		const child = spawn(runtime, [join(root, 'electron/window/main.ts')], { stdio: 'inherit', env: { ...process.env, LASTWRIGHT_DATA: options.dataFolder ?? defaultDataFolder() } })
		await new Promise<void>((resolve) => child.once('exit', () => resolve()))
		return
	}
	if (!options.noWindow && !runtime) tell("Electron's runtime is not installed here: Lastwright opens the same screens in a browser window instead.")
	const scratch = options.demo ? mkdtempSync(join(tmpdir(), 'lastwright-demo-')) : undefined
	const dataFolder = scratch ?? options.dataFolder ?? defaultDataFolder()
	const note = (text: string) => { process.stderr.write(`lastwright: ${text}\n`) }
	const app = scratch ? await openDemo(scratch, new Date().toDateString(), note) : createApp({ dataFolder, renderPdf, note })
	const loopback = await openLoopback(app, options.port === undefined ? {} : { port: options.port })
	tell(options.demo ? `Demo: an invented clinic in a folder of its own, thrown away at the end. Passphrase, if you lock it: ${demoPassphrase}` : `Records: ${dataFolder}`)

	// the first page is drawn sooner if its worker is ready, and the window comes sooner if the worker waits for it
	setTimeout(warmPdf, warmAfterMs).unref()
	const ended = new Promise<void>((resolve) => {
		process.once('SIGINT', () => resolve())
		process.once('SIGTERM', () => resolve())
		const browser = options.noWindow || !hasDisplay() ? undefined : findBrowser()
		if (browser) {
			tell(`Window: ${browser}`)
			const child = openAppWindow(browser, loopback.url)
			child.once('error', () => tell(`The window could not be opened. Open this address in a browser on this PC: ${loopback.url}`))
			child.once('exit', () => resolve())
		} else tell(`Open this address in a browser on this PC (it works once): ${loopback.url}`)
	})
	await ended
	await loopback.close()
	app.close()
	if (scratch) rmSync(scratch, { recursive: true, force: true })
	process.exit(0)
}
