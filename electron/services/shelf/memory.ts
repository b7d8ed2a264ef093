/** What is remembered of the shelf. */
import type { Shelf } from '../../../shared/engine/visit/shelf.ts'
import { Latest, type Taken } from '../records/newest.ts'

export class ShelfMemory {
	readonly #shelf = new Latest<Shelf>()

	/** What can be bought locally; undefined until a shelf is saved. */
	get shelf(): Shelf | undefined {
		return this.#shelf.value
	}
	/** The record that holds it; what is saved next follows it. */
	get recordId(): string | undefined {
		return this.#shelf.recordId
	}
	take(taken: Taken<Shelf>): void {
		this.#shelf.take(taken)
	}
	forget(records: ReadonlySet<string>): void {
		this.#shelf.forget(records)
	}
	clear(): void {
		this.#shelf.clear()
	}
}
