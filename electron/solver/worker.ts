/** HiGHS in a thread of its own: solving blocks the thread it runs in. */
import { parentPort } from 'node:worker_threads'
import type { SeasonProblem } from '../../shared/engine/season/problem/problem.ts'
import { StatedError } from '../../shared/engine/words/stated.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'
import { loadHighs, solveLevels } from './levels.ts'
import type { SolverMessage } from './solve.ts'

/** What failed; a fault of the solver itself is told in its own words. */
const saidOf = (error: unknown): Statement =>
	error instanceof StatedError
		? { ...error.said, says: error.message }
		: state('season.solver-failed', {
				reported: error instanceof Error ? error.message : String(error),
			})
const post = (message: SolverMessage): void => parentPort?.postMessage(message)
parentPort?.once(
	'message',
	async ({
		problem,
		...limits
	}: {
		problem: SeasonProblem
		timeLimitSeconds: number
		gap: number
	}) => {
		try {
			post({
				type: 'done',
				solved: solveLevels(await loadHighs(), problem, limits, (progress) =>
					post({ type: 'progress', ...progress }),
				),
			})
		} catch (error) {
			post({ type: 'failed', said: saidOf(error) })
		}
	},
)
