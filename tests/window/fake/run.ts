/** Runs the shell on the stand-in, each start a process of its own, and reads what was told. */
import { spawn } from 'node:child_process'
import { existsSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Told } from './checks.ts'
import type { Mutant } from './mutant.ts'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const pinned = join(root, 'node_modules/node/bin/node')
const here = (name: string): string => fileURLToPath(new URL(name, import.meta.url))
/** A check that hangs is a check that failed. */
const longestMs = 240_000

/** @param data the folder of the records; @param names checks in their order; @param mutant a line of the shell that is another */
export function runShell(data: string, names: readonly string[], mutant?: Mutant): Promise<Told[]> {
	const child = spawn(
		existsSync(pinned) ? pinned : process.execPath,
		[
			'--disable-warning=ExperimentalWarning',
			'--import',
			new URL('./hooks.ts', import.meta.url).href,
			here('./start.ts'),
			JSON.stringify(names),
		],
		{
			cwd: root,
			stdio: ['ignore', 'pipe', 'pipe'],
			env: {
				...process.env,
				LASTWRIGHT_DATA: data,
				...(mutant ? { LASTWRIGHT_MUTANT: JSON.stringify(mutant) } : {}),
			},
		},
	)
	let told = ''
	let noted = ''
	child.stdout.on('data', (chunk: Buffer) => {
		told += chunk.toString()
	})
	child.stderr.on('data', (chunk: Buffer) => {
		noted += chunk.toString()
	})
	const timer = setTimeout(() => child.kill('SIGKILL'), longestMs)
	return new Promise((resolve) => {
		child.on('exit', () => {
			clearTimeout(timer)
			const lines = told.split('\n').filter((line) => line.startsWith('{'))
			const read = lines.map((line) => JSON.parse(line) as Told)
			const missing = names.filter((name) => !read.some((one) => one.name === name))
			const ended = `The shell ended before this check. ${noted.slice(-2000)}`
			resolve([...read, ...missing.map((name) => ({ name, fault: ended }))])
		})
	})
}
