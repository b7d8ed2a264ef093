/** The data key as it lies in the file: wrapped once for each person and for the recovery key. */
import type { Database } from './database.ts'
import { passphraseBytes, SealBroken, stretch, unseal, type Wrapped } from './seal.ts'

/** The slot of the owner's passphrase; every other person has one of their own. */
export const ownerSlot = 'passphrase'
/** The slot of the printed recovery key. */
export const recoverySlot = 'recovery'

export class KeySlots {
	readonly #database: Database
	constructor(database: Database) {
		this.#database = database
	}
	/** Whether the file can be looked into and a key was ever made for it. */
	get isSetUp(): boolean {
		return this.#database.isOpen && this.#database.first('SELECT 1 FROM keyslot') !== undefined
	}
	put(slot: string, wrapped: Wrapped): void {
		this.#database.run(
			'INSERT INTO keyslot VALUES (?, ?, ?, ?) ON CONFLICT (slot) DO UPDATE SET cost = ' +
				'excluded.cost, salt = excluded.salt, sealed = excluded.sealed',
			slot,
			wrapped.cost,
			wrapped.salt,
			wrapped.sealed,
		)
	}
	/** @throws Error where there is no such slot: the records were never set up */
	read(slot: string): Wrapped {
		const row = this.#database.first<Wrapped>(
			'SELECT cost, salt, sealed FROM keyslot WHERE slot = ?',
			slot,
		)
		if (!row) throw new Error('These records have not been set up yet.')
		return row
	}
	/** Which person's slot a passphrase opens; slots of one salt cost one stretching. */
	async find(passphrase: string): Promise<{ slot: string; key: Uint8Array } | undefined> {
		const rows = this.#database.all<Wrapped & { slot: string }>(
			'SELECT slot, cost, salt, sealed FROM keyslot WHERE slot <> ? ORDER BY slot',
			recoverySlot,
		)
		const stretched = new Map<string, Uint8Array>()
		for (const row of rows) {
			const name = `${row.cost}:${Buffer.from(row.salt).toString('hex')}`
			const secret =
				stretched.get(name) ?? (await stretch(passphraseBytes(passphrase), row.salt, row.cost))
			stretched.set(name, secret)
			try {
				return { slot: row.slot, key: unseal(secret, row.slot, 'keyslot', row.sealed) }
			} catch (error) {
				if (!(error instanceof SealBroken)) throw error
			}
		}
		return undefined
	}
	/** @throws Error for the two slots without which the records could not be opened again */
	drop(slot: string): void {
		if (slot === ownerSlot || slot === recoverySlot)
			throw new Error('The owner and the recovery key cannot be taken off.')
		this.#database.run('DELETE FROM keyslot WHERE slot = ?', slot)
	}
}
