/** A program of ours that is killed with SIGKILL while it works. */
import { spawn } from 'node:child_process'

/**
 * @returns the process id and the whole lines it printed, killed `delayMs` after the first one;
 * rejects where it ended by itself
 */
export function runUntilKilled(
	script: string,
	args: readonly string[],
	delayMs: number,
): Promise<{ pid: number; lines: string[] }> {
	return new Promise((resolve, reject) => {
		const child = spawn(
			process.execPath,
			['--disable-warning=ExperimentalWarning', script, ...args],
			{ stdio: ['ignore', 'pipe', 'pipe'] },
		)
		let printed = ''
		let complaint = ''
		child.stderr.on('data', (chunk: Buffer) => {
			complaint += chunk.toString()
		})
		child.stdout.on('data', (chunk: Buffer) => {
			if (printed === '') setTimeout(() => child.kill('SIGKILL'), delayMs)
			printed += chunk.toString()
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
