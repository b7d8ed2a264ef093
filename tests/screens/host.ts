/** Starts the real host for a browser test and reads the address it prints. */
import { type ChildProcess, spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from '@playwright/test'
import { demoDay } from '../demo.ts'

const root = fileURLToPath(new URL('../..', import.meta.url))
const pinned = join(root, 'node_modules/node/bin/node')

export interface RunningHost {
	url: string
	child: ChildProcess
	kill: (signal?: NodeJS.Signals) => Promise<void>
}

/** A page beside the demo shows the time of its day; a little behind it, never ahead. */
export const onDemoDay = (page: Page): Promise<void> =>
	page.clock.setSystemTime(new Date(`${demoDay}T10:55`))
/** In place of --demo: told on the day of this PC, for what goes to another program and back. */
export const today = 'the demo of today'
/**
 * The demo is told on the day on which its files stand.
 * @param args further arguments of `start`, such as --demo or --data FOLDER
 */
export const startHost = (...args: string[]): Promise<RunningHost> => startHostOf({}, ...args)
/** @param env what the host finds in its environment besides that of the test */
export async function startHostOf(
	env: Readonly<Record<string, string>>,
	...args: string[]
): Promise<RunningHost> {
	const child = spawn(
		existsSync(pinned) ? pinned : process.execPath,
		[
			'--disable-warning=ExperimentalWarning',
			join(root, 'build/program/main.js'),
			'start',
			'--no-window',
			...args.filter((arg) => arg !== today),
			...(args.includes('--demo') ? ['--day', demoDay] : []),
			...(args.includes(today) ? ['--demo'] : []),
		],
		{ cwd: root, stdio: ['ignore', 'pipe', 'pipe'], env: { ...process.env, ...env } },
	)
	let text = ''
	const url = await new Promise<string>((resolve, reject) => {
		const read = (chunk: Buffer) => {
			text += chunk.toString()
			const found = /http:\/\/127\.0\.0\.1:\d+\/\?t=[\w-]+/.exec(text)
			if (found) resolve(found[0])
		}
		child.stdout?.on('data', read)
		child.stderr?.on('data', read)
		child.on('exit', (code) => reject(new Error(`the host stopped with ${code}: ${text}`)))
		setTimeout(() => reject(new Error(`no address within 90 s: ${text}`)), 90_000).unref()
	})
	return {
		url,
		child,
		kill: (signal = 'SIGTERM') =>
			new Promise((resolve) => {
				if (child.exitCode !== null || child.signalCode !== null) return resolve()
				child.once('exit', () => resolve())
				child.kill(signal)
			}),
	}
}
