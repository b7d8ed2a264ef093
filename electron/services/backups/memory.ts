/** What is remembered of holds, and of lists after a restore that wait for decisions. */
import { type CameBack, openLines } from '../../../shared/desk/backups/came-back.ts'
import type { ValueOf } from '../../../shared/desk/ledger/ledger.ts'
import { Newest, type Taken } from '../records/newest.ts'

type HoldValue = ValueOf<'hold'>

/** Records that must not be destroyed while a dispute is open. */
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
/** What restores brought back or kept, line by line. */
export class RestoredMemory {
	readonly lists = new Newest<CameBack>()
	/** whether brought records could not be made safe yet: nothing may leave then either */
	unsafe = false

	take(taken: Taken<CameBack>): void {
		this.lists.take(taken.value.restoreId, taken)
	}
	forget(records: ReadonlySet<string>): void {
		this.lists.forget(records)
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
