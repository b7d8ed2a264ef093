/** A program of ours that is killed with SIGKILL while it works. */
import { spawn } from 'node:child_process'

/**
 * @param from how many lines are waited for before the delay is counted
 * @returns the process id and the whole lines it printed, killed `delayMs` after that line; rejects
 * where it ended by itself
 */
export function runUntilKilled(
	script: string,
	args: readonly string[],
	delayMs: number,
	from = 1,
): Promise<{ pid: number; lines: string[] }> {
	return new Promise((resolve, reject) => {
		const child = spawn(
			process.execPath,
			['--disable-warning=ExperimentalWarning', script, ...args],
			{ stdio: ['ignore', 'pipe', 'pipe'] },
		)
		let printed = ''
		let complaint = ''
		let isDoomed = false
		child.stderr.on('data', (chunk: Buffer) => {
			complaint += chunk.toString()
		})
		child.stdout.on('data', (chunk: Buffer) => {
			printed += chunk.toString()
			if (isDoomed || printed.split('\n').length <= from) return
			isDoomed = true
			setTimeout(() => child.kill('SIGKILL'), delayMs)
		})
		child.once('error', reject)
		child.once('close', (code, signal) =>
			signal === 'SIGKILL'
				? resolve({
						pid: child.pid ?? 0,
						lines: printed.slice(0, printed.lastIndexOf('\n')).split('\n'),
					})
				: reject(new Error(`the program ended by itself (${code}): ${complaint}`)),
		)
	})
}
