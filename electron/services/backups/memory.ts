/** What is remembered of holds, and of lists after a restore that wait for decisions. */
import { type CameBack, cameBackSchema, openLines } from '../../../shared/desk/backups/came-back.ts'
import { holdSchema } from '../../../shared/desk/records/retention.ts'
import { Newest } from '../records/newest.ts'
import type { Remembered } from '../records/remember.ts'

/** Records that must not be destroyed while a dispute is open. */
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
/** What restores brought back or kept, line by line. */
export class RestoredMemory {
	readonly lists = new Newest<CameBack>()
	/** whether brought records could not be made safe yet: nothing may leave then either */
	unsafe = false

	take({ id, value }: Remembered): void {
		const list = cameBackSchema.parse(value)
		this.lists.take(list.restoreId, list, id)
	}
	/** The lists that wait for decisions, the newest last. */
	open(): CameBack[] {
		return this.lists.all().filter((list) => openLines(list).length > 0)
	}
	/** Why nothing is sent by itself, in words; undefined where nothing is in the way. */
	get inTheWay(): string | undefined {
		if (this.unsafe)
			return (
				'Records were brought here and could not be made safe yet. Nothing is sent. Free some ' +
				'space on the disk, lock and unlock.'
			)
		return this.open().length > 0
			? 'Nothing is sent by itself until the owner has decided the list After the restore, ' +
					'under Backups and records.'
			: undefined
	}
	/** The same for everybody who works here, a sentence or none. */
	get says(): string[] {
		return this.inTheWay === undefined ? [] : [this.inTheWay]
	}
	clear(): void {
		this.lists.clear()
		this.unsafe = false
	}
}
