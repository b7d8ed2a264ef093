/** One program at a time on a data folder. */
import { readFileSync, rmSync, writeFileSync } from 'node:fs'

// A sandboxed program may get the same process id at every start: a lock with our own id that we do
// not hold is a dead one.
const held = new Set<string>()

function alive(pid: number): boolean {
	try {
		process.kill(pid, 0)
		return true
	} catch (error) {
		return (error as NodeJS.ErrnoException).code === 'EPERM'
	}
}
/**
 * Takes the lock file, or takes over one whose process has died. @returns what releases it. @throws
 * Error where another process holds it
 */
export function takeLock(file: string): () => void {
	for (let attempt = 0; attempt < 3; attempt++) {
		try {
			writeFileSync(file, String(process.pid), { flag: 'wx', mode: 0o600 })
			held.add(file)
			return () => {
				held.delete(file)
				rmSync(file, { force: true })
			}
		} catch (error) {
			if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error
			const pid = Number(readFileSync(file, 'utf8'))
			if (Number.isInteger(pid) && pid > 0 && (pid === process.pid ? held.has(file) : alive(pid)))
				throw new Error(
					`The records in this folder are already open in another Lastwright (process ${pid}). ` +
						'Close it first, or use its window.',
				)
			rmSync(file, { force: true })
		}
	}
	throw new Error(
		`The lock file ${file} cannot be taken. Close any other Lastwright and start again.`,
	)
}
