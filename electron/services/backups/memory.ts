/** What is remembered of holds: records that must not be destroyed while a dispute is open. */
import { holdSchema } from '../../../shared/desk/records/retention.ts'
import type { Remembered } from '../records/remember.ts'

export class HoldsMemory {
	readonly #byPlayer = new Map<string, { reason: string; recordId: string }>()

	/** the holds in force, by player */
	get byPlayer(): ReadonlyMap<string, { reason: string; recordId: string }> {
		return this.#byPlayer
	}
	has(playerId: string): boolean {
		return this.#byPlayer.has(playerId)
	}
	take({ id, value }: Remembered): void {
		const { playerId, reason, on } = holdSchema.parse(value)
		if (on) this.#byPlayer.set(playerId, { reason, recordId: id })
		else this.#byPlayer.delete(playerId)
	}
	clear(): void {
		this.#byPlayer.clear()
	}
}
