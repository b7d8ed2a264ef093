/**
 * Wrong PINs, counted for each person aimed at and kept sealed: neither a restart nor the right PIN
 * of anybody takes them away, only that person's passphrase.
 */
import type { Store } from '../../store/store.ts'
import { pinTriesNote } from './sealed-notes.ts'

/** After so many only the passphrase of that person opens. */
export const mostWrongPins = 5

export class PinTries {
	readonly #store: Store
	/** ids of everybody, also of those who left */
	readonly #everybody: () => string[]
	constructor(store: Store, everybody: () => string[]) {
		this.#store = store
		this.#everybody = everybody
	}
	/** A note that cannot be read counts as full for everybody: damage must not give new tries. */
	#counts(): Readonly<Record<string, number>> {
		const read = pinTriesNote.read(this.#store)
		if (read.state === 'read') return read.value
		if (read.state === 'none') return {}
		return Object.fromEntries(this.#everybody().map((id) => [id, mostWrongPins]))
	}
	#put(personId: string, wrong: number): void {
		const { [personId]: _, ...others } = this.#counts()
		pinTriesNote.write(this.#store, wrong === 0 ? others : { ...others, [personId]: wrong })
	}
	wrong(personId: string): number {
		return this.#counts()[personId] ?? 0
	}
	isBarred(personId: string): boolean {
		return this.wrong(personId) >= mostWrongPins
	}
	/** Counts a try before it is looked at, so that it counts also where the disk is full. */
	count(personId: string): void {
		this.#put(personId, this.wrong(personId) + 1)
	}
	/** The counted try was right. */
	giveBack(personId: string): void {
		this.#put(personId, Math.max(0, this.wrong(personId) - 1))
	}
	/** The passphrase of that person was right. */
	forget(personId: string): void {
		if (this.wrong(personId) > 0) this.#put(personId, 0)
	}
}
