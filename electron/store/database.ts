/** The records file: how it is opened, its statements, and transactions that are whole or not. */
import { chmodSync } from 'node:fs'
import {
	DatabaseSync,
	type SQLOutputValue,
	type StatementResultingChanges,
	type StatementSync,
} from 'node:sqlite'
import { need } from '../../shared/engine/plain/need.ts'

type Value = string | number | null | Uint8Array

/** What remembers something of the file, and must keep up when a transaction begins or ends. */
export interface Around {
	/** before an outermost transaction begins */
	beginning?(): void
	/** before an outermost transaction is committed: the last moment to write */
	ending?(): void
	committed?(): void
	/** what the inventory lists is written, or taken off where it has no digest */
	touched?(name: string, digest: string | undefined): void
	/** after a transaction was rolled back: what was remembered of it is not so */
	undone?(): void
}

/** Nothing can be written just now; the message says why. */
export class WritesHeld extends Error {}

/** Columns that hold bytes, whatever a damaged file says that they hold. */
const byteColumns = ['sealed', 'hash', 'value', 'card', 'salt', 'public', 'box', 'endorsement']
/** Bytes that came out as text or number are damage: no seal opens with none. */
function mendBytes(row: Record<string, SQLOutputValue>): Record<string, SQLOutputValue> {
	for (const name of byteColumns) {
		const value = row[name]
		if (value !== undefined && value !== null && !(value instanceof Uint8Array))
			row[name] = new Uint8Array(0)
	}
	return row
}

export class Database {
	#db: DatabaseSync | undefined
	readonly #statements = new Map<string, StatementSync>()
	readonly #around: Around[] = []
	#afterCommit: (() => void)[] = []
	#depth = 0
	#held: string | undefined

	/** Opens or creates the file; nothing is changed in it but its journal. */
	open(file: string): void {
		const db = new DatabaseSync(file)
		try {
			this.#statements.clear()
			chmodSync(file, 0o600)
			db.exec(
				'PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON; CREATE ' +
					'TABLE IF NOT EXISTS meta (name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT',
			)
		} catch (error) {
			db.close()
			throw error
		}
		this.#db = db
	}
	get #opened(): DatabaseSync {
		return need(this.#db, 'the records file')
	}
	get isOpen(): boolean {
		return this.#opened.isOpen
	}
	get isTransaction(): boolean {
		return this.#opened.isTransaction
	}
	/** Whether work is under way inside together(). */
	get isTogether(): boolean {
		return this.#depth > 0
	}
	close(): void {
		if (this.#opened.isOpen) this.#opened.close()
	}
	exec(sql: string): void {
		this.#opened.exec(sql)
	}
	prepare(sql: string): StatementSync {
		return this.#opened.prepare(sql)
	}
	#prepared(sql: string): StatementSync {
		let statement = this.#statements.get(sql)
		if (!statement) {
			statement = this.#opened.prepare(sql)
			this.#statements.set(sql, statement)
		}
		return statement
	}
	/** Lets go of the statements that were prepared. */
	forgetStatements(): void {
		this.#statements.clear()
	}
	/**
	 * Runs a statement that writes.
	 * @throws TypeError where a value is missing or of a kind that SQLite would bend
	 */
	run(sql: string, ...values: Value[]): void {
		this.#run(sql, values)
	}
	/** The same for an insertion. @returns the number of the new row */
	insert(sql: string, ...values: Value[]): number {
		return Number(this.#run(sql, values).lastInsertRowid)
	}
	#run(sql: string, values: readonly Value[]): StatementResultingChanges {
		this.#mustNotBeHeld()
		// node:sqlite binds a missing argument as NULL without a word: count and check first
		if ((sql.match(/\?/g) ?? []).length !== values.length)
			throw new TypeError('store: wrong number of values for a statement')
		for (const value of values)
			if (
				value !== null &&
				typeof value !== 'string' &&
				!(value instanceof Uint8Array) &&
				!Number.isSafeInteger(value)
			)
				throw new TypeError('store: a value of a wrong kind')
		return this.#prepared(sql).run(...values)
	}
	/** The first row that is found. */
	first<Row>(sql: string, ...values: Value[]): Row | undefined {
		const row = this.#prepared(sql).get(...values)
		return row && (mendBytes(row) as Row)
	}
	all<Row>(sql: string, ...values: Value[]): Row[] {
		return this.#prepared(sql)
			.all(...values)
			.map((row) => mendBytes(row) as Row)
	}
	/** Row by row, by a statement of its own: the same one may be walked inside another walk. */
	*iterate<Row>(sql: string, ...values: Value[]): Generator<Row, void> {
		for (const row of this.#opened.prepare(sql).iterate(...values)) yield mendBytes(row) as Row
	}
	/** From now on nothing is written until release(): what would be is refused with these words. */
	hold(words: string): void {
		if (this.#depth > 0) throw new Error('store: held inside a transaction')
		this.#held = words
	}
	release(): void {
		this.#held = undefined
	}
	get isHeld(): boolean {
		return this.#held !== undefined
	}
	#mustNotBeHeld(): void {
		if (this.#held !== undefined) throw new WritesHeld(this.#held)
	}
	/** Tells a part of the store when an outermost transaction begins and ends. */
	tell(part: Around): void {
		this.#around.push(part)
	}
	/** All of it or none of it; one inside another belongs to the outer one. */
	together<T>(work: () => T): T {
		if (this.#depth > 0) return work()
		this.#mustNotBeHeld()
		for (const part of this.#around) part.beginning?.()
		this.#opened.exec('BEGIN IMMEDIATE')
		this.#depth++
		try {
			const result = work()
			for (const part of this.#around) part.ending?.()
			this.#opened.exec('COMMIT')
			this.#depth--
			for (const part of this.#around) part.committed?.()
			this.#committed()
			return result
		} catch (error) {
			this.#depth = 0
			this.#afterCommit = []
			if (this.#opened.isTransaction) this.#opened.exec('ROLLBACK')
			for (const part of this.#around) part.undone?.()
			throw error
		}
	}
	/**
	 * Runs once the outermost transaction is committed, at once outside of one; not at all where it
	 * is rolled back.
	 */
	afterCommit(work: () => void): void {
		if (this.#depth === 0) work()
		else this.#afterCommit.push(work)
	}
	#committed(): void {
		const works = this.#afterCommit
		this.#afterCommit = []
		for (const work of works) work()
	}
	/** Tells the parts that something which the inventory lists is being written. */
	touched(name: string, digest: string | undefined): void {
		for (const part of this.#around) part.touched?.(name, digest)
	}
}
