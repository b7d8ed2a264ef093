/**
 * The roll: one narrow row for each record, in order of writing. It is read whole when the records
 * are opened, with a running digest that the heads keep; what is looked up is looked up here, so that
 * a damaged index of the file can hide nothing.
 */
import { createHash, type Hash } from 'node:crypto'
import type { Around, Database } from './database.ts'

export interface RollRow {
	seq: number
	id: string
	kind: string
	at: string
	follows: string | null
	origin: string
	tick: number
	/** among the records of one origin, from 1; 0 in those of the first versions */
	number: number
	form: number
	/** keyed digests of the player it is about and of the thing it is a version of */
	about: string | null
	thing: string | null
	/** the form of its card's seal; 0 where it has no card */
	cardForm: number
}
/** The columns of a RollRow. */
export const rollColumns =
	'seq, id, kind, at, follows, origin, tick, number, form, about, thing, cardForm'
/** Which way a list of rows is found. */
export type RollKey = 'kind' | 'about' | 'thing'
const rollKeys: readonly RollKey[] = ['kind', 'about', 'thing']

/** What of a row the running digest is fed with. */
function lineOf(row: RollRow): string {
	const { seq, id, kind, at, follows, origin, tick, number, form, about, thing, cardForm } = row
	// whether there is a card counts, its form does not: a card may be made anew
	const whole = [seq, id, kind, at, follows, origin, tick, number, form, about, thing, cardForm > 0]
	return JSON.stringify(whole)
}
/** Rows that are fed in one go: each feeding costs more than the row itself. */
const fedAtOnce = 256
function feed(hash: Hash, rows: readonly RollRow[]): void {
	for (let from = 0; from < rows.length; from += fedAtOnce)
		hash.update(
			rows
				.slice(from, from + fedAtOnce)
				.map(lineOf)
				.join(''),
		)
}
/** Order that every store agrees on, then order of writing. */
export function inCommonOrder(first: RollRow, second: RollRow): number {
	if (first.tick !== second.tick) return first.tick - second.tick
	if (first.origin !== second.origin) return first.origin < second.origin ? -1 : 1
	return first.seq - second.seq
}

export class Roll implements Around {
	readonly #database: Database
	#rows: RollRow[] = []
	readonly #byId = new Map<string, RollRow>()
	readonly #by: Record<RollKey, Map<string, RollRow[]>> = {
		kind: new Map(),
		about: new Map(),
		thing: new Map(),
	}
	#hash: Hash = createHash('sha256')
	#isRead = false
	constructor(database: Database) {
		this.#database = database
	}
	/** Another file was opened, or rows were removed: it is read anew when it is asked. */
	forget(): void {
		this.#isRead = false
		this.#rows = []
		this.#byId.clear()
		for (const key of rollKeys) this.#by[key].clear()
		this.#hash = createHash('sha256')
	}
	undone(): void {
		this.forget()
	}
	#read(): void {
		if (this.#isRead) return
		this.forget()
		// in order of the table itself, past every index
		for (const row of this.#database.iterate<RollRow>(
			`SELECT ${rollColumns} FROM roll NOT INDEXED ORDER BY seq`,
		))
			this.#list(row)
		feed(this.#hash, this.#rows)
		this.#isRead = true
	}
	#list(row: RollRow): void {
		this.#rows.push(row)
		this.#byId.set(row.id, row)
		for (const key of rollKeys) {
			const value = row[key]
			if (value === null) continue
			const found = this.#by[key].get(value)
			if (found) found.push(row)
			else this.#by[key].set(value, [row])
		}
	}
	/** Adds the row of a record just written. @param card its sealed short form */
	add(row: RollRow, card: Uint8Array | null): void {
		this.#read()
		this.#insert(row, card)
		this.#list(row)
		feed(this.#hash, [row])
	}
	#insert(row: RollRow, card: Uint8Array | null): void {
		this.#database.run(
			`INSERT INTO roll (${rollColumns}, card) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
			row.seq,
			row.id,
			row.kind,
			row.at,
			row.follows,
			row.origin,
			row.tick,
			row.number,
			row.form,
			row.about,
			row.thing,
			row.cardForm,
			card,
		)
	}
	/** Writes a row over: made anew from its record. */
	replace(row: RollRow, card: Uint8Array | null): void {
		this.#database.run('DELETE FROM roll WHERE seq = ?', row.seq)
		this.#insert(row, card)
		this.forget()
	}
	/** Takes off a row that belongs to no record. */
	dropRow(seq: number): void {
		this.#database.run('DELETE FROM roll WHERE seq = ?', seq)
		this.forget()
	}
	drop(id: string): void {
		this.#database.run('DELETE FROM roll WHERE id = ?', id)
		this.forget()
	}
	get count(): number {
		this.#read()
		return this.#rows.length
	}
	/** The running digest over all rows, hex. */
	get digest(): string {
		this.#read()
		return this.#hash.copy().digest('hex')
	}
	/** The digest as it stood after so many rows; undefined where there are fewer. */
	digestAfter(rows: number): string | undefined {
		this.#read()
		if (rows > this.#rows.length) return undefined
		if (rows === this.#rows.length) return this.digest
		const hash = createHash('sha256')
		feed(hash, this.#rows.slice(0, rows))
		return hash.digest('hex')
	}
	/** In order of writing. */
	all(): readonly RollRow[] {
		this.#read()
		return this.#rows
	}
	byId(id: string): RollRow | undefined {
		this.#read()
		return this.#byId.get(id)
	}
	/** Rows of a kind, about a player or of a thing, in the common order. */
	find(key: RollKey, value: string | null): RollRow[] {
		this.#read()
		return value === null ? [] : [...(this.#by[key].get(value) ?? [])].sort(inCommonOrder)
	}
	/** The sealed short form of a record; undefined where its row is gone. */
	cardOf(seq: number): Uint8Array | null | undefined {
		return this.#database.first<{ card: Uint8Array | null }>(
			'SELECT card FROM roll WHERE seq = ?',
			seq,
		)?.card
	}
	/** The highest place in the order, and the highest number of an origin. */
	last(origin: string): { tick: number; number: number } {
		this.#read()
		let [tick, number] = [0, 0]
		for (const row of this.#rows) {
			tick = Math.max(tick, row.tick)
			if (row.origin === origin) number = Math.max(number, row.number)
		}
		return { tick, number }
	}
}
