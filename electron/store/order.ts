/** Where a new record stands in the order that every store agrees on: who wrote it, its count. */
import { randomBytes } from 'node:crypto'
import type { Around, Database } from './database.ts'
import type { Settings } from './settings.ts'

export class Order implements Around {
	readonly #database: Database
	readonly #settings: Settings
	#origin = ''
	#tick = 0
	constructor(database: Database, settings: Settings) {
		this.#database = database
		this.#settings = settings
	}
	/** A file was opened: its own name is read, or given it once, and the last count. */
	opened(): void {
		this.#origin = this.#settings.text('origin') ?? ''
		if (!this.#origin) {
			this.#origin = randomBytes(6).toString('hex')
			this.#settings.put('origin', this.#origin)
		}
		this.#recount()
	}
	get origin(): string {
		return this.#origin
	}
	next(): { origin: string; tick: number } {
		return { origin: this.#origin, tick: ++this.#tick }
	}
	/** What is written from now on stands behind a record that came in. */
	standBehind(tick: number): void {
		this.#tick = Math.max(this.#tick, tick)
	}
	undone(): void {
		this.#recount()
	}
	#recount(): void {
		const last = this.#database.first<{ tick: number | null }>(
			'SELECT max(tick) AS tick FROM record',
		)
		this.#tick = Number(last?.tick ?? 0)
	}
}
