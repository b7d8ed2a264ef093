/** Small notes of this store itself, by their names; never merged. */
import type { Database } from './database.ts'

export class Settings {
	readonly #database: Database
	constructor(database: Database) {
		this.#database = database
	}
	text(name: string): string | undefined {
		const bytes = this.bytes(name)
		return bytes && Buffer.from(bytes).toString('utf8')
	}
	bytes(name: string): Uint8Array | undefined {
		return this.#database.first<{ value: Uint8Array }>(
			'SELECT value FROM setting WHERE name = ?',
			name,
		)?.value
	}
	put(name: string, value: string | Uint8Array): void {
		this.#database.run(
			'INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
			name,
			typeof value === 'string' ? Buffer.from(value, 'utf8') : value,
		)
	}
	drop(name: string): void {
		this.#database.run('DELETE FROM setting WHERE name = ?', name)
	}
}
