/** Drafts: what is being typed, sealed; the only thing in the store that is written over. */
import type { Database } from './database.ts'
import { isEnvelope, openAny, shut } from './envelope.ts'
import { digestOfBytes } from './inventory.ts'
import type { Keyring } from './keyring.ts'
import { decode, encode } from './record.ts'
import { SealBroken } from './seal.ts'

interface DraftRow {
	id: string
	sealed: Uint8Array
	at: string
}
const draftName = (id: string) => `draft ${id}`

export class Drafts {
	readonly #database: Database
	readonly #keyring: Keyring
	constructor(database: Database, keyring: Keyring) {
		this.#database = database
		this.#keyring = keyring
	}
	/** @param at when it was typed, ISO 8601; bound into what is sealed */
	save(id: string, at: string, value: unknown): void {
		const sealed = shut(this.#keyring.opened().newest, encode(value), ['draft', id, at])
		this.#database.together(() => {
			this.#database.touched(draftName(id), digestOfBytes(at, sealed))
			this.#database.run(
				'INSERT INTO draft (id, sealed, at) VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET ' +
					'sealed = excluded.sealed, at = excluded.at',
				id,
				sealed,
				at,
			)
		})
	}
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	read(id: string): { at: string; value: unknown } | undefined {
		const row = this.#database.first<DraftRow>('SELECT id, sealed, at FROM draft WHERE id = ?', id)
		return row && { at: row.at, value: decode(this.#clear(row)) }
	}
	#clear({ id, sealed, at }: DraftRow): Uint8Array {
		const keys = this.#keyring.opened()
		const before = { id, kind: 'draft' }
		try {
			return openAny(keys, sealed, ['draft', id, at], { ...before, also: [at] })
		} catch (error) {
			if (!(error instanceof SealBroken) || isEnvelope(keys, sealed)) throw error
			// drafts of the first version did not bind their time
			return openAny(keys, sealed, ['draft', id, at], before)
		}
	}
	/** Each draft with its digest, for the inventory. */
	digests(): [name: string, digest: string][] {
		return this.#database
			.all<DraftRow>('SELECT id, sealed, at FROM draft')
			.map(({ id, at, sealed }) => [draftName(id), digestOfBytes(at, sealed)])
	}
	/** Those typed longest ago first. */
	ids(): string[] {
		return this.#database
			.all<{ id: string }>('SELECT id FROM draft ORDER BY at')
			.map((row) => row.id)
	}
	drop(id: string): void {
		this.#database.together(() => {
			this.#database.touched(draftName(id), undefined)
			this.#database.run('DELETE FROM draft WHERE id = ?', id)
		})
	}
}
