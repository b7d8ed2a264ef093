/** Records in a copy beside those in use, as the services work on them before they stand in place. */

import type { Carried } from '../../shared/desk/outreach/carried.ts'
import type { OpenCard } from './cards.ts'
import { destroyForGood } from './destruction.ts'
import type { Parts } from './parts.ts'
import { decode, encode, type NewRecord, type StoredRecord } from './record.ts'

/** The same calls as those of the store itself, on another file. */
export class BroughtFile {
	readonly #parts: Parts
	constructor(parts: Parts) {
		this.#parts = parts
	}
	together<T>(work: () => T): T {
		return this.#parts.database.together(work)
	}
	append(record: NewRecord): string {
		return this.#parts.records.append(record)
	}
	/** @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		return this.#parts.records.read(id)
	}
	has(id: string): boolean {
		return this.#parts.records.has(id)
	}
	each(kinds: readonly string[], use: (record: StoredRecord) => void, damaged: string[]): void {
		this.#parts.records.each(kinds, use, damaged)
	}
	recordsAbout(playerId: string): string[] {
		return this.#parts.cards.recordsAbout(playerId)
	}
	/** @throws SealBroken where the card and its record are damaged */
	cardsOf(kind: string, thing: string): OpenCard[] {
		return this.#parts.cards.of(kind, thing)
	}
	draftIds(): string[] {
		return this.#parts.drafts.ids()
	}
	/** @throws SealBroken where it is damaged */
	draft(id: string): { at: string; value: unknown } | undefined {
		return this.#parts.drafts.read(id)
	}
	takeIn(coming: Carried): void {
		this.#parts.travelling.takeIn(coming)
	}
	destroy(recordIds: readonly string[], draftIds: readonly string[], register: () => void): void {
		destroyForGood(this.#parts, recordIds, draftIds, register)
	}
	/** Undefined where there is none. @throws SealBroken where it is damaged */
	sealedSetting(name: string): unknown {
		const bytes = this.#parts.keyring.sealedSetting(name)
		return bytes && decode(bytes)
	}
	setSealedSetting(name: string, value: unknown): void {
		this.#parts.keyring.putSealedSetting(name, encode(value))
	}
}
