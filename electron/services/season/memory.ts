/**
 * What is remembered of seasons: the plans that are being solved. Locking does not forget them: the
 * solving goes on to its end, and what comes of it is refused then.
 */
import type { Progress } from '../../solver/solve.ts'

/** A plan that is being solved. */
interface Run {
	stop: AbortController
	progress: Progress
}
export class SeasonMemory {
	readonly #runs = new Map<string, Run>()

	/** Whether a plan of this player is being solved. */
	isPlanning(playerId: string): boolean {
		return this.#runs.has(playerId)
	}
	runOf(playerId: string): Run | undefined {
		return this.#runs.get(playerId)
	}
	/** Notes that a plan of this player is being solved from now on. */
	begin(playerId: string): Run {
		const run: Run = { stop: new AbortController(), progress: { pass: 1, seconds: 0 } }
		this.#runs.set(playerId, run)
		return run
	}
	end(playerId: string): void {
		this.#runs.delete(playerId)
	}
}
