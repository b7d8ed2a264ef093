/**
 * Solves a season's rotation in a worker thread: the caller's thread stays free, progress is
 * reported, and it can be cancelled.
 */
import { Worker } from 'node:worker_threads'
import type { Rotation, SeasonProblem } from '../../shared/engine/season/problem/problem.ts'

export interface Solved {
	status: 'optimal' | 'time-limit'
	/** relative distance to the proven bound, the larger of the two passes */ gap: number
	rotation: Rotation
	/** points of tiers 1 and 2 */ objective: number
	seconds: number
}
export interface Progress {
	pass: 1 | 2
	seconds: number
	gap?: number
}
export type SolverMessage =
	| ({ type: 'progress' } & Progress)
	| { type: 'done'; solved: Solved }
	| { type: 'failed'; message: string }
export interface SolveOptions {
	/** seconds for both passes together; 10 unless given */ timeLimitSeconds?: number
	/** relative gap at which a plan counts as proven; 0.001 unless given */ gap?: number
	onProgress?: (progress: Progress) => void
	signal?: AbortSignal
}
/** The person stopped it: nothing was changed. */
export class SolveCancelled extends Error {
	constructor() {
		super('Planning was cancelled. Nothing was changed.')
		this.name = 'SolveCancelled'
	}
}

/** @throws SolveCancelled; Error in plain words where the solver could not answer */
export function solveSeason(
	problem: SeasonProblem,
	{ timeLimitSeconds = 10, gap = 0.001, onProgress, signal }: SolveOptions = {},
): Promise<Solved> {
	return new Promise((resolve, reject) => {
		if (signal?.aborted) {
			reject(new SolveCancelled())
			return
		}
		const worker = new Worker(new URL('./worker.ts', import.meta.url))
		let over = false
		const end = (act: () => void) => {
			if (over) return
			over = true
			signal?.removeEventListener('abort', cancel)
			void worker.terminate()
			act()
		}
		const cancel = () => end(() => reject(new SolveCancelled()))
		signal?.addEventListener('abort', cancel)
		worker.on('message', (message: SolverMessage) => {
			if (message.type === 'progress') {
				if (!over)
					onProgress?.({
						pass: message.pass,
						seconds: message.seconds,
						...(message.gap === undefined ? {} : { gap: message.gap }),
					})
			} else if (message.type === 'done') end(() => resolve(message.solved))
			else end(() => reject(new Error(`The season could not be planned (${message.message}).`)))
		})
		worker.on('error', (error) =>
			end(() => reject(new Error(`The season could not be planned (${error.message}).`))),
		)
		worker.on('exit', () =>
			end(() =>
				reject(new Error('The season could not be planned: the solver stopped. Try again.')),
			),
		)
		worker.postMessage({ problem, timeLimitSeconds, gap })
	})
}
