/**
 * One folder for all that a test run writes: tests, hosts and browsers are started with it as their
 * temporary folder,
 * so that what a killed process leaves behind goes with it. Runs that were killed themselves are
 * cleared by the next one.
 */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'

const name = /^lastwright-run-(\d+)-/
function alive(pid: number): boolean {
	try {
		process.kill(pid, 0)
		return true
	} catch (error) {
		return (error as NodeJS.ErrnoException).code === 'EPERM'
	}
}
/**
 * A process that is still ending may write once more: tried again a few times. What stays is no
 * test's failure.
 */
function clear(folder: string): void {
	try {
		rmSync(folder, { recursive: true, force: true, maxRetries: 5, retryDelay: 200 })
	} catch {
		/* a mount that could not be taken off, or a file still open on Windows */
	}
}
/**
 * Makes the folder the temporary one of this process and of those it starts. Vitest and Playwright
 * call it before the first test, and what it returns after the last.
 * @returns what removes the folder and puts the old one back
 */
export default function ownTemporary(): () => void {
	const outer = tmpdir()
	for (const one of readdirSync(outer))
		if (name.test(one) && !alive(Number(name.exec(one)?.[1]))) clear(join(outer, one))
	const folder = mkdtempSync(join(outer, `lastwright-run-${process.pid}-`))
	// the heads outside the folders of records are kept in it as well
	const variables = ['TMPDIR', 'TEMP', 'TMP', 'LASTWRIGHT_OUTSIDE'] as const
	const before = variables.map((one) => process.env[one])
	for (const one of variables) process.env[one] = folder
	const end = () => {
		for (const [at, one] of variables.entries()) {
			const old = before[at]
			if (old === undefined) delete process.env[one]
			else process.env[one] = old
		}
		clear(folder)
	}
	// a run that ends by an error clears up as well; one that is killed is cleared by the next
	process.once('exit', end)
	return end
}
