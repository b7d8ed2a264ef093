/** Drafts: what is being typed, sealed; the only thing in the store that is written over. */
import type { Database } from './database.ts'
import type { Keyring } from './keyring.ts'
import { decode, encode } from './record.ts'
import { SealBroken, seal, unseal } from './seal.ts'

export class Drafts {
	readonly #database: Database
	readonly #keyring: Keyring
	constructor(database: Database, keyring: Keyring) {
		this.#database = database
		this.#keyring = keyring
	}
	/** @param at when it was typed, ISO 8601; bound into what is sealed */
	save(id: string, at: string, value: unknown): void {
		this.#database.run(
			'INSERT INTO draft (id, sealed, at) VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET ' +
				'sealed = excluded.sealed, at = excluded.at',
			id,
			seal(this.#keyring.opened(), id, 'draft', encode(value), [at]),
			at,
		)
	}
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	read(id: string): { at: string; value: unknown } | undefined {
		const row = this.#database.first<{ sealed: Uint8Array; at: string }>(
			'SELECT sealed, at FROM draft WHERE id = ?',
			id,
		)
		if (!row) return undefined
		const key = this.#keyring.opened()
		try {
			return { at: row.at, value: decode(unseal(key, id, 'draft', row.sealed, [row.at])) }
		} catch (error) {
			// drafts of the first version did not bind their time
			if (error instanceof SealBroken)
				return { at: row.at, value: decode(unseal(key, id, 'draft', row.sealed)) }
			throw error
		}
	}
	/** Those typed longest ago first. */
	ids(): string[] {
		return this.#database
			.all<{ id: string }>('SELECT id FROM draft ORDER BY at')
			.map((row) => row.id)
	}
	drop(id: string): void {
		this.#database.run('DELETE FROM draft WHERE id = ?', id)
	}
}
