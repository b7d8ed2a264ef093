/** The sealed, append-only record store on node:sqlite. */
import { randomBytes, randomUUID } from 'node:crypto'
import { chmodSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync, type SQLInputValue } from 'node:sqlite'
import { takeLock } from './lock.ts'
import { migrations } from './migrations.ts'
import { printRecoveryKey, readRecoveryKey } from './recovery.ts'
import { passphraseBytes, seal, SealBroken, scryptCost, unseal, unwrap, wrap, type Wrapped } from './seal.ts'

export type Kind = 'clinic' | 'player' | 'visit' | 'report'
export interface StoredRecord { id: string; kind: Kind; at: string; follows?: string; value: unknown }
export interface NewRecord { id?: string; kind: Kind; at: string; follows?: string; value: unknown }
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/

const encode = (value: unknown): Uint8Array => Buffer.from(JSON.stringify(value), 'utf8')
const decode = (bytes: Uint8Array): unknown => JSON.parse(Buffer.from(bytes).toString('utf8'))

export class Store {
	#db: DatabaseSync
	#release: () => void
	#key: Uint8Array | undefined
	#cost: number

	/** Opens or creates the store. @throws Error where it is open elsewhere or was written by a newer version */
	constructor(folder: string, options: { cost?: number } = {}) {
		this.#cost = options.cost ?? scryptCost
		mkdirSync(folder, { recursive: true, mode: 0o700 })
		chmodSync(folder, 0o700)
		this.#release = takeLock(join(folder, 'lastwright.lock'))
		const file = join(folder, 'lastwright.db')
		let db: DatabaseSync | undefined
		try {
			db = new DatabaseSync(file)
			chmodSync(file, 0o600)
			db.exec('PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; CREATE TABLE IF NOT EXISTS meta (name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT')
			this.#db = db
			this.#migrate()
		} catch (error) {
			db?.close()
			this.#release()
			throw error
		}
	}
	#migrate(): void {
		const found = Number((this.#db.prepare("SELECT value FROM meta WHERE name = 'schema'").get() as { value: number } | undefined)?.value ?? 0)
		if (found > migrations.length) throw new Error(`These records were written by a newer Lastwright (schema ${found}; this one knows up to ${migrations.length}). Install the newer version to open them.`)
		for (let step = found; step < migrations.length; step++) this.together(() => {
			this.#db.exec(migrations[step] ?? '')
			this.#run("INSERT INTO meta VALUES ('schema', ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value", step + 1)
		})
	}
	// node:sqlite binds a missing argument as NULL without a word: count and check first.
	#run(sql: string, ...values: (string | number | null | Uint8Array)[]): void {
		if ((sql.match(/\?/g) ?? []).length !== values.length) throw new TypeError('store: wrong number of values for a statement')
		for (const value of values) if (value !== null && typeof value !== 'string' && !(value instanceof Uint8Array) && !Number.isSafeInteger(value)) throw new TypeError('store: a value of a wrong kind')
		this.#db.prepare(sql).run(...(values as SQLInputValue[]))
	}
	/** All of it or none of it. */
	together<T>(work: () => T): T {
		this.#db.exec('BEGIN IMMEDIATE')
		try { const result = work(); this.#db.exec('COMMIT'); return result } catch (error) { this.#db.exec('ROLLBACK'); throw error }
	}
	get isSetUp(): boolean { return this.#db.prepare('SELECT 1 FROM keyslot').get() !== undefined }
	get isOpen(): boolean { return this.#key !== undefined }
	#opened(): Uint8Array { if (!this.#key) throw new Error('The records are locked. Unlock them first.'); return this.#key }
	#slot(slot: string, w: Wrapped): void { this.#run('INSERT INTO keyslot VALUES (?, ?, ?, ?) ON CONFLICT (slot) DO UPDATE SET cost = excluded.cost, salt = excluded.salt, sealed = excluded.sealed', slot, w.cost, w.salt, w.sealed) }
	#wrapped(slot: string): Wrapped { const row = this.#db.prepare('SELECT cost, salt, sealed FROM keyslot WHERE slot = ?').get(slot) as Wrapped | undefined; if (!row) throw new Error('These records have not been set up yet.'); return row }

	/** Makes the data key and its two wrappings. @returns the recovery key to print; it is kept nowhere */
	async setUp(passphrase: string): Promise<string> {
		if (this.isSetUp) throw new Error('These records are set up already. Unlock them instead.')
		const key = randomBytes(32)
		const recovery = randomBytes(20)
		const byPassphrase = await wrap(key, 'passphrase', passphraseBytes(passphrase), this.#cost)
		const byRecovery = await wrap(key, 'recovery', recovery, this.#cost)
		this.together(() => {
			// a second set-up may have finished during the stretching: its key is in use and stays
			if (this.isSetUp) throw new Error('These records are set up already. Unlock them instead.')
			this.#slot('passphrase', byPassphrase)
			this.#slot('recovery', byRecovery)
		})
		this.#key = key
		return printRecoveryKey(recovery)
	}
	/** @throws SealBroken on a wrong passphrase */
	async unlock(passphrase: string): Promise<void> { this.#key = await unwrap(this.#wrapped('passphrase'), 'passphrase', passphraseBytes(passphrase)) }
	/** @throws RangeError naming the mistyped group, SealBroken on another store's key */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<void> {
		const key = await unwrap(this.#wrapped('recovery'), 'recovery', readRecoveryKey(typed))
		this.#slot('passphrase', await wrap(key, 'passphrase', passphraseBytes(newPassphrase), this.#cost))
		this.#key = key
	}
	lock(): void { this.#key?.fill(0); this.#key = undefined }
	/** Appends one record. @returns its id */
	append(record: NewRecord): string {
		const id = record.id ?? randomUUID()
		if (!uuid.test(id)) throw new TypeError('store: a record id is a random UUID')
		this.#run('INSERT INTO record (id, kind, at, follows, sealed) VALUES (?, ?, ?, ?, ?)', id, record.kind, record.at, record.follows ?? null, seal(this.#opened(), id, record.kind, encode(record.value)))
		return id
	}
	/** Records of the kinds in order of writing; damaged ones are named and the rest still load. */
	load(kinds: readonly Kind[]): { records: StoredRecord[]; damaged: string[] } {
		const key = this.#opened()
		const records: StoredRecord[] = []
		const damaged: string[] = []
		for (const kind of kinds) for (const row of this.#db.prepare('SELECT id, kind, at, follows, sealed FROM record WHERE kind = ? ORDER BY seq').all(kind) as unknown as { id: string; kind: Kind; at: string; follows: string | null; sealed: Uint8Array }[]) {
			try {
				records.push({ id: row.id, kind: row.kind, at: row.at, ...(row.follows === null ? {} : { follows: row.follows }), value: decode(unseal(key, row.id, row.kind, row.sealed)) })
			} catch (error) {
				if (!(error instanceof SealBroken)) throw error
				damaged.push(`Record ${row.id} (${row.kind}, written ${row.at}) is damaged and cannot be read. All other records are unaffected; restore it from a backup.`)
			}
		}
		return { records, damaged }
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		const row = this.#db.prepare('SELECT id, kind, at, follows, sealed FROM record WHERE id = ?').get(id) as { id: string; kind: Kind; at: string; follows: string | null; sealed: Uint8Array } | undefined
		if (!row) throw new Error('There is no such record.')
		return { id: row.id, kind: row.kind, at: row.at, ...(row.follows === null ? {} : { follows: row.follows }), value: decode(unseal(this.#opened(), row.id, row.kind, row.sealed)) }
	}
	/** Ids of a kind with the record each follows, without opening any. */
	follows(kind: Kind): { id: string; follows: string | undefined }[] {
		return (this.#db.prepare('SELECT id, follows FROM record WHERE kind = ? ORDER BY seq').all(kind) as { id: string; follows: string | null }[]).map((row) => ({ id: row.id, follows: row.follows ?? undefined }))
	}
	saveDraft(id: string, at: string, value: unknown): void { this.#run('INSERT INTO draft VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET sealed = excluded.sealed, at = excluded.at', id, seal(this.#opened(), id, 'draft', encode(value)), at) }
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	draft(id: string): { at: string; value: unknown } | undefined {
		const row = this.#db.prepare('SELECT sealed, at FROM draft WHERE id = ?').get(id) as { sealed: Uint8Array; at: string } | undefined
		return row && { at: row.at, value: decode(unseal(this.#opened(), id, 'draft', row.sealed)) }
	}
	draftIds(): string[] { return (this.#db.prepare('SELECT id FROM draft ORDER BY at').all() as { id: string }[]).map((row) => row.id) }
	dropDraft(id: string): void { this.#run('DELETE FROM draft WHERE id = ?', id) }
	close(): void { this.lock(); this.#db.close(); this.#release() }
}
