/** Finds a browser that can show the screens in an app window. */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { delimiter, join } from 'node:path'
import { pathToFileURL } from 'node:url'

const names = [
	'chromium',
	'chromium-browser',
	'google-chrome',
	'google-chrome-stable',
	'microsoft-edge',
	'brave-browser',
]
const places: Partial<Record<NodeJS.Platform, string[]>> = {
	darwin: [
		'/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
		'/Applications/Chromium.app/Contents/MacOS/Chromium',
		'/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge',
	],
	win32: [
		'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
		'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
		'C:\\Program Files\\Microsoft\\Edge\\Application\\msedge.exe',
	],
}
export function findBrowser(): string | undefined {
	const named = process.env.LASTWRIGHT_BROWSER
	if (named && existsSync(named)) return named
	const onPath = (process.env.PATH ?? '')
		.split(delimiter)
		.flatMap((folder) => names.map((name) => join(folder, name)))
	return [...(places[process.platform] ?? []), ...onPath].find((file) => existsSync(file))
}
export function hasDisplay(): boolean {
	return (
		process.platform === 'win32' ||
		process.platform === 'darwin' ||
		Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY)
	)
}
/**
 * Writes the page that leads to the address. The address carries the token, and a command line can
 * be read by every user of the PC; this file only by its owner.
 * @internal
 */
export function writeDoor(folder: string, url: string): string {
	const file = join(folder, 'open.html')
	writeFileSync(
		file,
		'<!doctype html><html lang="en"><meta charset="utf-8"><title>Lastwright</title><meta ' +
			`http-equiv="refresh" content="0;url=${url}"><p>Opening Lastwright.</p></html>`,
		{ mode: 0o600, flag: 'wx' },
	)
	return pathToFileURL(file).href
}
/** Ends a window with everything it started. */
export function endWindow(child: ChildProcess, signal: 'SIGTERM' | 'SIGKILL'): void {
	if (child.pid === undefined || child.exitCode !== null || child.signalCode !== null) return
	try {
		if (process.platform === 'win32') child.kill(signal)
		else process.kill(-child.pid, signal)
	} catch {
		/* it ended by itself meanwhile */
	}
}
/** Opens an app window with a profile of its own that is removed when the window closes. */
export function openAppWindow(browser: string, url: string): ChildProcess {
	const profile = mkdtempSync(join(tmpdir(), 'lastwright-window-'))
	const root = process.getuid?.() === 0 ? ['--no-sandbox'] : []
	const child = spawn(
		browser,
		[
			`--app=${writeDoor(profile, url)}`,
			`--user-data-dir=${profile}`,
			'--no-first-run',
			'--no-default-browser-check',
			'--disable-background-networking',
			'--disable-component-update',
			'--disable-sync',
			'--disable-quic',
			'--window-size=1440,900',
			...root,
		],
		// a group of its own: it is ended with all that it started
		{ stdio: 'ignore', detached: process.platform !== 'win32' },
	)
	child.once('exit', () => rmSync(profile, { recursive: true, force: true, maxRetries: 5 }))
	return child
}
