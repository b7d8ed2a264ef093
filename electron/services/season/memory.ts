/**
 * What is remembered of seasons: the plans that are being solved, and those that were made and wait
 * to be taken. Locking does not forget them: the solving goes on to its end, and what comes of it
 * is refused then.
 */
import type { SeasonValue } from '../../../shared/desk/season/season-record.ts'
import type { Progress } from '../../solver/solve.ts'

/** A plan that is being solved. */
interface Run {
	stop: AbortController
	progress: Progress
}
/** A plan that was made and is not kept yet. */
interface Proposed {
	value: Extract<SeasonValue, { what: 'plan' }>
	/** record of the plan that it would follow */
	follows: string | undefined
	/** who asked for it */
	by: unknown
}
export class SeasonMemory {
	readonly #runs = new Map<string, Run>()
	readonly #proposed = new Map<string, Proposed>()

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
	/** Remembers a plan until it is taken, left, or another takes its place. */
	propose(playerId: string, proposed: Proposed): void {
		this.#proposed.set(playerId, proposed)
	}
	/** The plan that waits, which no longer waits from then on. */
	takeProposed(playerId: string): Proposed | undefined {
		const proposed = this.#proposed.get(playerId)
		this.#proposed.delete(playerId)
		return proposed
	}
}
