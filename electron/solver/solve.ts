/**
 * Solves a season's rotation in a worker thread: the caller's thread stays free, progress is
 * reported, and it can be cancelled.
 */
import { Worker } from 'node:worker_threads'
import type { Level } from '../../shared/engine/season/problem/levels.ts'
import type { Rotation, SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { StatedError } from '../../shared/engine/words/stated.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'
import { threadFile } from '../place.ts'

/** How far a level was brought. */
export interface Reached {
	level: Level
	/** sessions, points an hour or hours: what the level counts */
	reached: number
	proven: boolean
	gap: number
}
export interface Solved {
	status: 'optimal' | 'time-limit'
	/** relative distance to the proven bound, the largest of all levels */
	gap: number
	rotation: Rotation
	/** in the order of what matters */
	levels: Reached[]
	seconds: number
}
export interface Progress {
	/** the level that is being solved, from 1 */
	pass: number
	seconds: number
	gap?: number
}
export type SolverMessage =
	| ({ type: 'progress' } & Progress)
	| { type: 'done'; solved: Solved }
	| { type: 'failed'; said: Statement }
export interface SolveOptions {
	/** seconds for all levels together; 10 unless given */
	timeLimitSeconds?: number
	/** relative gap at which a plan counts as proven; 0.001 unless given */
	gap?: number
	onProgress?: (progress: Progress) => void
	signal?: AbortSignal
}
/** The person stopped it: nothing was changed. */
export class SolveCancelled extends StatedError {
	constructor() {
		super(state('season.cancelled'))
		this.name = 'SolveCancelled'
	}
}

/** @throws SolveCancelled; StatedError where the solver could not answer */
export function solveSeason(
	problem: SeasonProblem,
	{ timeLimitSeconds = 10, gap = 0.001, onProgress, signal }: SolveOptions = {},
): Promise<Solved> {
	return new Promise((resolve, reject) => {
		if (signal?.aborted) {
			reject(new SolveCancelled())
			return
		}
		const worker = new Worker(threadFile('solver'))
		let over = false
		const end = (act: () => void) => {
			if (over) return
			over = true
			signal?.removeEventListener('abort', cancel)
			void worker.terminate()
			act()
		}
		const fail = (error: Error) => end(() => reject(error))
		const cancel = () => fail(new SolveCancelled())
		const hear = (message: SolverMessage): void => {
			if (over) return
			if (message.type === 'done') end(() => resolve(message.solved))
			else if (message.type === 'failed') fail(new StatedError(message.said))
			else {
				const { type: _type, ...progress } = message
				onProgress?.(progress)
			}
		}
		signal?.addEventListener('abort', cancel)
		worker.on('message', hear)
		worker.on('error', () => fail(new StatedError(state('season.solver-stopped'))))
		worker.on('exit', () => fail(new StatedError(state('season.solver-stopped'))))
		worker.postMessage({ problem, timeLimitSeconds, gap })
	})
}
