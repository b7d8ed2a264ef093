/** What is remembered of holds: records that must not be destroyed while a dispute is open. */
import type { ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { Newest, type Taken } from '../records/newest.ts'

type HoldValue = ValueOf<'hold'>

export class HoldsMemory {
	/** the last word on each player */
	readonly #words = new Newest<HoldValue>()

	/** The holds in force, by player. */
	get byPlayer(): ReadonlyMap<string, { reason: string; recordId: string | undefined }> {
		return new Map(
			this.#words
				.all()
				.filter(({ on }) => on)
				.map(({ playerId, reason }) => [
					playerId,
					{ reason, recordId: this.#words.recordOf(playerId) },
				]),
		)
	}
	has(playerId: string): boolean {
		return this.#words.get(playerId)?.on === true
	}
	take(taken: Taken<HoldValue>): void {
		this.#words.take(taken.value.playerId, taken)
	}
	forget(records: ReadonlySet<string>): void {
		this.#words.forget(records)
	}
	clear(): void {
		this.#words.clear()
	}
}
