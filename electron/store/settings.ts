/** Small notes of this store itself, by their names; never merged. */
import type { Database } from './database.ts'
import { digestOfBytes } from './inventory.ts'

/** Under this name stand the names that this PC bore before, which its backups carry. */
export const ownSetting = 'own'

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
		const bytes = typeof value === 'string' ? Buffer.from(value, 'utf8') : value
		this.#database.together(() => {
			if (isInventoried(name)) this.#database.touched(settingName(name), digestOfBytes(bytes))
			this.#database.run(
				'INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
				name,
				bytes,
			)
		})
	}
	drop(name: string): void {
		this.#database.together(() => {
			if (isInventoried(name)) this.#database.touched(settingName(name), undefined)
			this.#database.run('DELETE FROM setting WHERE name = ?', name)
		})
	}
	/** Each setting with its digest, for the inventory. */
	digests(): [name: string, digest: string][] {
		return this.#database
			.all<{ name: string; value: Uint8Array }>('SELECT name, value FROM setting ORDER BY name')
			.filter(({ name }) => isInventoried(name))
			.map(({ name, value }) => [settingName(name), digestOfBytes(value)])
	}
}
const settingName = (name: string) => `setting ${name}`
/** What is written while the records are locked cannot stand in the sealed inventory, nor can it. */
const notInventoried: readonly string[] = ['inventory', 'tries', 'purge', 'restored', 'place']
const isInventoried = (name: string) => !notInventoried.includes(name)
