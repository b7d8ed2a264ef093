/**
 * Things by the newest of their versions, in whatever order those come: memory that was extended
 * record by record is what reading all of them in order would make.
 */
import { inOrder } from '../../../shared/desk/outreach/carried.ts'
import type { StoredRecord } from '../../store/store.ts'

/** Where a record stands in the order that all stores agree on. */
export type Place = Pick<StoredRecord, 'id' | 'origin' | 'tick'>
/** A record that was read, as memory is extended by it. */
export interface Taken<Value> extends Place {
	follows?: string | undefined
	value: Value
}
export const isLater = (place: Place, than: Place | undefined): boolean =>
	than === undefined || inOrder(place, than) >= 0

/** Things of one kind by their id. */
export class Newest<Value> {
	readonly #things = new Map<string, Taken<Value>>()
	get(id: string): Value | undefined {
		return this.#things.get(id)?.value
	}
	/** The record the next version follows; undefined where there is none yet. */
	recordOf(id: string): string | undefined {
		return this.#things.get(id)?.id
	}
	/** In the order in which the first version of each was taken. */
	all(): Value[] {
		return [...this.#things.values()].map((thing) => thing.value)
	}
	/** The newest version of each, in the common order. */
	inOrder(): Taken<Value>[] {
		return [...this.#things.values()].sort(inOrder)
	}
	take(id: string, taken: Taken<Value>): void {
		if (isLater(taken, this.#things.get(id))) this.#things.set(id, taken)
	}
	/** Forgets what these records hold: it was destroyed, or a newer version cannot be read. */
	forget(records: ReadonlySet<string>): void {
		for (const [id, taken] of this.#things) if (records.has(taken.id)) this.#things.delete(id)
	}
	clear(): void {
		this.#things.clear()
	}
}
/** One thing of which there is only one. */
export class Latest<Value> {
	#taken: Taken<Value> | undefined
	get value(): Value | undefined {
		return this.#taken?.value
	}
	/** The record that holds it; what is saved next follows it. */
	get recordId(): string | undefined {
		return this.#taken?.id
	}
	take(taken: Taken<Value>): void {
		if (isLater(taken, this.#taken)) this.#taken = taken
	}
	forget(records: ReadonlySet<string>): void {
		if (this.#taken && records.has(this.#taken.id)) this.clear()
	}
	clear(): void {
		this.#taken = undefined
	}
}
