/** Where a new record stands in the order that every store agrees on: who wrote it, its count. */
import { randomBytes } from 'node:crypto'
import type { Around } from './database.ts'
import type { Roll } from './roll.ts'
import { ownSetting, type Settings } from './settings.ts'

const originLong = 6

export class Order implements Around {
	readonly #settings: Settings
	readonly #roll: Roll
	#origin = ''
	#recordsId = ''
	#last: { tick: number; number: number } | undefined
	constructor(settings: Settings, roll: Roll) {
		this.#settings = settings
		this.#roll = roll
	}
	/** A file was opened: its own names are read, or given it once. */
	opened(): void {
		const origin = this.#settings.text('origin')
		this.#origin = origin ?? randomBytes(originLong).toString('hex')
		if (origin === undefined) this.#settings.put('origin', this.#origin)
		const recordsId = this.#settings.text('records')
		this.#recordsId = recordsId ?? this.#origin
		if (recordsId === undefined) this.#settings.put('records', this.#recordsId)
		this.#last = undefined
	}
	/** The name of this installation: of what is written here. */
	get origin(): string {
		return this.#origin
	}
	/** The name of these records, the same in every copy of them. */
	get recordsId(): string {
		return this.#recordsId
	}
	/** Names that these records were written under here before. */
	get former(): string[] {
		return (this.#settings.text('former') ?? '').split(' ').filter(Boolean)
	}
	/** Names that this PC bore, the present one first: its backups carry one of them. */
	get own(): string[] {
		const before = (this.#settings.text(ownSetting) ?? '').split(' ')
		return [this.#origin, ...before].filter(Boolean)
	}
	/** Takes a new name: these records are a copy of others, which go on under the old one. */
	renew(): void {
		this.#settings.put('former', [...this.former, this.#origin].join(' '))
		this.#origin = randomBytes(originLong).toString('hex')
		this.#settings.put('origin', this.#origin)
		this.#last = undefined
	}
	next(): { origin: string; tick: number; number: number } {
		this.#last ??= this.#roll.last(this.#origin)
		this.#last = { tick: this.#last.tick + 1, number: this.#last.number + 1 }
		return { origin: this.#origin, ...this.#last }
	}
	/** What is written from now on stands behind a record that came in. */
	standBehind(tick: number): void {
		this.#last ??= this.#roll.last(this.#origin)
		this.#last = { ...this.#last, tick: Math.max(this.#last.tick, tick) }
	}
	undone(): void {
		this.#last = undefined
		this.#origin = this.#settings.text('origin') ?? this.#origin
	}
}
