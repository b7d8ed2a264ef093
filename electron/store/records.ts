/** The records themselves: appended, read, never changed. */
import { createHash, randomUUID } from 'node:crypto'
import type { Cards } from './cards.ts'
import type { Database } from './database.ts'
import type { Keyring } from './keyring.ts'
import type { Kind } from './kinds.ts'
import type { Order } from './order.ts'
import {
	damagedWords,
	mustBeRecordId,
	type NewRecord,
	openRecord,
	type RecordRow,
	recordColumns,
	type StoredRecord,
	sealRecord,
} from './record.ts'
import { SealBroken } from './seal.ts'
import type { Trail } from './trail.ts'

/** The parts of a store that work on records together. */
export interface RecordParts {
	database: Database
	keyring: Keyring
	order: Order
	cards: Cards
	trail: Trail
}

export class Records {
	readonly #database: Database
	readonly #keyring: Keyring
	readonly #order: Order
	readonly #cards: Cards
	readonly #trail: Trail
	constructor({ database, keyring, order, cards, trail }: RecordParts) {
		this.#database = database
		this.#keyring = keyring
		this.#order = order
		this.#cards = cards
		this.#trail = trail
	}
	get count(): number {
		const row = this.#database.first<{ total: number }>('SELECT count(*) AS total FROM record')
		return Number(row?.total)
	}
	has(id: string): boolean {
		return this.#database.first('SELECT 1 FROM record WHERE id = ?', id) !== undefined
	}
	/**
	 * Appends one record with its card and its audit row.
	 * @returns its id
	 * @throws TypeError where the id given is no random UUID
	 */
	append(record: NewRecord): string {
		const { id = randomUUID(), kind, at, follows, about } = record
		mustBeRecordId(id)
		this.#database.together(() => {
			this.insert({ id, kind, at, follows: follows ?? null, ...this.#order.next() }, record.value)
			this.#cards.putWanted(id, kind, record)
			this.#trail.note({
				function: record.does ?? (follows === undefined ? 'create' : 'update'),
				objectRef: `${kind}:${id}`,
				playerId: about ?? null,
			})
		})
		return id
	}
	/** Seals a record into its row; card, audit row and transaction are the caller's. */
	insert(place: Omit<RecordRow, 'sealed' | 'form'>, value: unknown): void {
		const row = sealRecord(this.#keyring.opened(), place, value)
		this.#database.run(
			'INSERT INTO record (id, kind, at, follows, sealed, form, origin, tick) VALUES (?, ?, ' +
				'?, ?, ?, ?, ?, ?)',
			row.id,
			row.kind,
			row.at,
			row.follows,
			row.sealed,
			row.form,
			row.origin,
			row.tick,
		)
	}
	/** Takes a record away: only while the trigger that forbids it is lifted (destruction.ts). */
	drop(id: string): void {
		this.#database.run('DELETE FROM record WHERE id = ?', id)
	}

	#row(id: string): RecordRow | undefined {
		return this.#database.first<RecordRow>(`SELECT ${recordColumns} FROM record WHERE id = ?`, id)
	}
	/** One record by id; undefined where there is none. @throws SealBroken where it is damaged */
	find(id: string): StoredRecord | undefined {
		const row = this.#row(id)
		return row && openRecord(this.#keyring.opened(), row)
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		const record = this.find(id)
		if (!record) throw new Error('There is no such record.')
		return record
	}
	/** Whether a record is here whole, as far as can be told with this key. */
	isReadable(id: string, key: Uint8Array): boolean {
		if (!this.#database.isOpen) return false
		const row = this.#row(id)
		if (!row) return false
		try {
			openRecord(key, row)
			return true
		} catch {
			return false
		}
	}
	/** The kinds of which there are records. */
	kinds(): Kind[] {
		return this.#database
			.all<{ kind: Kind }>('SELECT DISTINCT kind FROM record ORDER BY kind')
			.map((row) => row.kind)
	}
	/** Records of the kinds in order of writing; damaged ones are named and the rest still load. */
	load(kinds: readonly Kind[]): { records: StoredRecord[]; damaged: string[] } {
		const records: StoredRecord[] = []
		const damaged: string[] = []
		this.each(
			kinds,
			(record) => {
				records.push(record)
			},
			damaged,
		)
		return { records, damaged }
	}
	/** The same one by one, so that the sealed bytes of many need not stand in memory together. */
	each(kinds: readonly Kind[], use: (record: StoredRecord) => void, damaged: string[]): void {
		const key = this.#keyring.reader()
		for (const kind of kinds)
			for (const row of this.#database.iterate<RecordRow>(
				`SELECT ${recordColumns} FROM record WHERE kind = ? ORDER BY tick, origin, seq`,
				kind,
			)) {
				let record: StoredRecord
				try {
					record = openRecord(key, row)
				} catch (error) {
					if (!(error instanceof SealBroken)) throw error
					damaged.push(damagedWords(row))
					continue
				}
				use(record)
			}
	}

	/** Whether there are records of the first form, which bound neither time nor place. */
	hasUnbound(): boolean {
		// the form stands behind the sealed bytes: the order column, which is 0 in form 1, spares
		// reading them all
		return (
			this.#database.first(
				'SELECT 1 FROM record INDEXED BY record_order WHERE tick = 0 AND form = 1 LIMIT 1',
			) !== undefined
		)
	}
	/** The record that binds those of the first form as a whole; undefined where there is none. */
	anchorId(): string | undefined {
		return this.#database.first<{ id: string }>("SELECT id FROM record WHERE kind = 'anchor'")?.id
	}
	/** Ids of the records of the first form, each with a digest of its whole row. */
	unboundDigests(): [string, string][] {
		return this.#database
			.all<RecordRow>(
				'SELECT id, kind, at, follows, sealed FROM record WHERE form = 1 ORDER BY seq',
			)
			.map((row) => [
				row.id,
				createHash('sha256')
					.update(JSON.stringify([row.id, row.kind, row.at, row.follows]))
					.update(row.sealed)
					.digest('hex')
					.slice(0, 32),
			])
	}
	/** Time of the newest of the records written last, as their clocks showed it. */
	newestOfLast(howMany: number): string | null {
		const row = this.#database.first<{ at: string | null }>(
			'SELECT max(at) AS at FROM (SELECT at FROM record ORDER BY seq DESC LIMIT ?)',
			howMany,
		)
		return row?.at ?? null
	}
}
