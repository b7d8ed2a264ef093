/** The store's backups: made and checked record by record, listed, looked into. */
import type { DatabaseSync } from 'node:sqlite'
import type { BackupName, BackupReason } from '../../shared/desk/records/backup-name.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { BackupRefused, makeBackup, openChecked } from './backup-file.ts'
import { tidy } from './backup-list.ts'
import type { DataKeys } from './data-keys.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'
import { openRecord, type RecordRow, recordColumns, type StoredRecord } from './record.ts'
import type { Records } from './records.ts'

const checkAtATime = 400
/** What a row of the first schema lacks, as the second one gave it to those that it found. */
const firstColumns =
	"seq, id, kind, at, follows, sealed, 1 AS form, '' AS origin, 0 AS tick, 0 AS number"
const secondColumns = 'seq, id, kind, at, follows, sealed, form, origin, tick, 0 AS number'

export interface BackupPreview {
	schema: number
	records: number
	visits: number
	lastAt?: string
	/** whether the open key opens it; absent while locked and where it holds no record */
	sameClinic?: boolean
	/** the versions of all players in order of writing; absent while locked */
	players?: StoredRecord[]
}
export class Backups {
	readonly #file: string
	readonly #keyring: Keyring
	readonly #records: Records
	readonly #order: Pick<Order, 'origin'>
	#underWay: Promise<unknown> = Promise.resolve()
	constructor(
		file: string,
		{ keyring, records, order }: { keyring: Keyring; records: Records; order: Order },
	) {
		this.#file = file
		this.#keyring = keyring
		this.#records = records
		this.#order = order
	}
	/**
	 * A dated backup, checked record by record; one at a time.
	 * @param now ISO 8601 at the moment it is begun
	 * @throws BackupRefused in words
	 */
	make(reason: BackupReason, folder: string, now: () => string): Promise<BackupName> {
		const next = this.#underWay.then(async () => {
			const at = now()
			const { origin } = this.#order
			const made = await makeBackup(this.#file, folder, { at, reason, origin }, async (db) => ({
				damaged: this.#keyring.isOpen && (await this.#holdsDamage(db)),
			}))
			tidy(folder, new Set([origin]), { made: made.file, now: at })
			return made
		})
		this.#underWay = next.catch(() => {})
		return next
	}
	/** Resolves when no backup is being written. */
	async done(): Promise<void> {
		await this.#underWay
	}
	/**
	 * Opens every record of a copy. @returns whether one is damaged
	 * @throws BackupRefused where one is that is whole here
	 */
	async #holdsDamage(db: DatabaseSync): Promise<boolean> {
		let from = -1
		let damaged = false
		for (;;) {
			const rows = db
				.prepare(`SELECT ${recordColumns} FROM record WHERE seq > ? ORDER BY seq LIMIT ?`)
				.all(from, checkAtATime) as unknown as RecordRow[]
			const last = rows.at(-1)
			if (!last) return damaged
			for (const row of rows) damaged = this.#isDamaged(row) || damaged
			from = last.seq
			await new Promise((resolve) => setImmediate(resolve))
		}
	}
	#isDamaged(row: RecordRow): boolean {
		const { keys } = this.#keyring
		// locked meanwhile: what could be checked was
		if (!keys) return false
		try {
			openRecord(keys, row)
			return false
		} catch {
			// a record damaged here already is no fault of the copy
			if (this.#records.isReadable(row.id))
				throw new BackupRefused(
					`The copy does not hold record ${row.id} whole. The stick or disk may be failing: ` +
						'use another one.',
				)
			return true
		}
	}
	/**
	 * What a backup holds. With the key open the players are counted and named; else only what stands
	 * in clear. @throws BackupRefused
	 */
	preview(file: string): BackupPreview {
		const { db, schema, records, kinds, lastAt } = openChecked(file)
		try {
			const { keys: key } = this.#keyring
			const clear = { schema, records, visits: kinds.visit ?? 0, ...present({ lastAt }) }
			if (!key) return clear
			const sameClinic = opensWith(db, schema, key)
			const players = sameClinic ? playersIn(db, schema, key) : []
			return { ...clear, ...present({ sameClinic }), players }
		} finally {
			db.close()
		}
	}
}
const columnsOf = (schema: number) => [firstColumns, secondColumns][schema - 1] ?? recordColumns
/** Whether the first record of a copy opens with this key; undefined where it holds none. */
function opensWith(db: DatabaseSync, schema: number, key: DataKeys): boolean | undefined {
	const first = db
		.prepare(`SELECT ${columnsOf(schema)} FROM record ORDER BY seq LIMIT 1`)
		.get() as unknown as RecordRow | undefined
	if (!first) return undefined
	try {
		openRecord(key, first)
		return true
	} catch {
		return false
	}
}
function playersIn(db: DatabaseSync, schema: number, key: DataKeys): StoredRecord[] {
	const order = schema > 1 ? 'tick, seq' : 'seq'
	const players: StoredRecord[] = []
	for (const row of db
		.prepare(`SELECT ${columnsOf(schema)} FROM record WHERE kind = 'player' ORDER BY ${order}`)
		.iterate() as unknown as Iterable<RecordRow>)
		try {
			players.push(openRecord(key, row))
		} catch {
			/* named when it is opened */
		}
	return players
}
