/** The store's backups: made and checked record by record, listed, looked into. */
import type { DatabaseSync } from 'node:sqlite'
import type { BackupName, BackupReason } from '../../shared/desk/records/backup-name.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { BackupRefused, makeBackup, openChecked } from './backup-file.ts'
import { tidy } from './backup-list.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'
import {
	openRecord,
	type RecordRow,
	recordColumns,
	type StoredRecord,
	unsealRow,
} from './record.ts'
import type { Records } from './records.ts'

const checkAtATime = 400
/** What a row of the first schema lacks, as the second one gave it to those that it found. */
const firstColumns = "id, kind, at, follows, sealed, 1 AS form, '' AS origin, 0 AS tick"

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
			const dataKey = this.#keyring.dataKey
			const key = dataKey && Buffer.from(dataKey)
			const at = now()
			const { origin } = this.#order
			const made = await makeBackup(this.#file, folder, { at, reason, origin }, async (db) => ({
				damaged: key ? await this.#holdsDamage(db, key) : false,
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
	async #holdsDamage(db: DatabaseSync, key: Uint8Array): Promise<boolean> {
		let from = -1
		let damaged = false
		for (;;) {
			const rows = db
				.prepare(`SELECT seq, ${recordColumns} FROM record WHERE seq > ? ORDER BY seq LIMIT ?`)
				.all(from, checkAtATime) as unknown as (RecordRow & { seq: number })[]
			const last = rows.at(-1)
			if (!last) return damaged
			for (const row of rows) damaged = this.#isDamaged(row, key) || damaged
			from = last.seq
			await new Promise((resolve) => setImmediate(resolve))
		}
	}
	#isDamaged(row: RecordRow, key: Uint8Array): boolean {
		try {
			unsealRow(key, row)
			return false
		} catch {
			// a record damaged here already is no fault of the copy
			if (this.#records.isReadable(row.id, key))
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
			const key = this.#keyring.dataKey
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
const columnsOf = (schema: number) => (schema > 1 ? recordColumns : firstColumns)
/** Whether the first record of a copy opens with this key; undefined where it holds none. */
function opensWith(db: DatabaseSync, schema: number, key: Uint8Array): boolean | undefined {
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
function playersIn(db: DatabaseSync, schema: number, key: Uint8Array): StoredRecord[] {
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
