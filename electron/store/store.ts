/** The sealed, append-only record store on node:sqlite. */
import {
	createHash,
	createHmac,
	createSecretKey,
	hkdfSync,
	type KeyObject,
	randomBytes,
	randomUUID,
} from 'node:crypto'
import { chmodSync, copyFileSync, existsSync, mkdirSync, renameSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite'
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import type { AuditEntry, AuditFunction } from '../../shared/desk/records/audit.ts'
import type { BackupName } from '../../shared/desk/records/keep.ts'
import { canonicalJson } from '../../shared/engine/plain/canonical.ts'
import { AuditTrail, type Keys, type OpenRow } from './audit.ts'
import { BackupRefused, copyAtOnce, listBackups, makeBackup, openChecked, tidy } from './backup.ts'
import { makeBox } from './box.ts'
import { putInPlace } from './files.ts'
import { takeLock } from './lock.ts'
import { migrations } from './migrations.ts'
import { printRecoveryKey, readRecoveryKey } from './recovery.ts'
import {
	passphraseBytes,
	SealBroken,
	scryptCost,
	seal,
	stretch,
	unseal,
	unwrap,
	type Wrapped,
	wrap,
} from './seal.ts'

export type Kind =
	| 'clinic'
	| 'player'
	| 'visit'
	| 'report'
	| 'person'
	| 'visit-note'
	| 'consent'
	| 'sending'
	| 'merge'
	| 'hold'
	| 'register'
	| 'settings'
	| 'shelf'
	| 'season'
	| 'pack'
	| 'answer'
	| 'quarantine'
	| 'squad'
	| 'anchor'
	| 'document'
	| 'outbox'
	| 'contact'
	| 'breach'
	| 'mail'
	| 'protocol'
	| 'sending-note'
	| 'trail'
export interface StoredRecord {
	id: string
	kind: Kind
	at: string
	follows?: string
	origin: string
	tick: number
	value: unknown
}
/**
 * `about` is the player, `thing` what the record is a version of; both are kept only as keyed
 * digests. `card` is the short form that lists need.
 */
export interface NewRecord {
	id?: string
	kind: Kind
	at: string
	follows?: string
	value: unknown
	about?: string
	thing?: string
	card?: unknown
	does?: AuditFunction
	ref?: string
}
export interface OpenCard {
	record: string
	kind: Kind
	card: unknown
}
/** Who acts, for the audit trail. */
export interface Actor {
	personId: string | null
	role: string
	purpose: string
}
export interface StoreOptions {
	cost?: number
	now?: () => Date
	actor?: () => Actor
	backupFolder?: string
}
interface Row {
	id: string
	kind: Kind
	at: string
	follows: string | null
	sealed: Uint8Array
	form: number
	origin: string
	tick: number
}

export const ownerSlot = 'passphrase'
const recoverySlot = 'recovery'
const fileName = 'lastwright.db'
const uuid = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/
const sqliteCorrupt = 11
const sqliteNotADatabase = 26
const checkAtATime = 400
const minuteMs = 60_000
/**
 * A search that is being typed is one row of the trail: written once it stood still so long, and at
 * the latest after the second time.
 */
const searchSettledMs = 400
const searchLongestMs = 3000
/**
 * How many of the last records are asked whether one was written later than this PC's clock shows.
 */
const clockLooksBack = 2000
const columns = 'id, kind, at, follows, sealed, form, origin, tick'

const encode = (value: unknown): Uint8Array => Buffer.from(JSON.stringify(value), 'utf8')
const decode = (bytes: Uint8Array): unknown => JSON.parse(Buffer.from(bytes).toString('utf8'))
const bound = (row: Omit<Row, 'sealed'>): (string | number | null)[] =>
	row.form === 1 ? [] : [row.at, row.follows, row.origin, row.tick, row.form]
const openRow = (key: KeyObject | Uint8Array, row: Row): StoredRecord => ({
	id: row.id,
	kind: row.kind,
	at: row.at,
	...(row.follows === null ? {} : { follows: row.follows }),
	origin: row.origin,
	tick: row.tick,
	value: decode(unseal(key, row.id, row.kind, row.sealed, bound(row))),
})
const damagedWords = (row: Row) =>
	`Record ${row.id} (${row.kind}, written ${row.at}) is damaged and cannot be read. All other ` +
	'records are unaffected; restore it from a backup.'
const sqlWords = (error: unknown) => (error as { errstr?: string }).errstr ?? ''
/** Whether a failure is the disk's, full or not writable, and not ours. */
export const diskTrouble = (error: unknown): boolean =>
	/full|readonly|read-only/.test(sqlWords(error))

export class Store {
	#db!: DatabaseSync
	#release: () => void
	#key: Uint8Array | undefined
	#aboutKey: Uint8Array | undefined
	#reader: KeyObject | undefined
	#cost: number
	#folder: string
	#options: StoreOptions
	#statements = new Map<string, StatementSync>()
	#depth = 0
	#audited = false
	#audit!: AuditTrail
	#held: AuditEntry[] = []
	#typed: { entry: AuditEntry; since: number; timer: NodeJS.Timeout } | undefined
	#tick = 0
	#origin = ''
	#backingUp: Promise<unknown> = Promise.resolve()
	/** What the person should know about the opening, in words. */
	readonly notices: string[] = []

	/**
	 * Opens or creates the store. @throws Error where it is open elsewhere, was written by a newer
	 * version, or the folder cannot be written
	 */
	constructor(folder: string, options: StoreOptions = {}) {
		this.#cost = options.cost ?? scryptCost
		this.#options = options
		this.#folder = folder
		try {
			mkdirSync(folder, { recursive: true, mode: 0o700 })
			chmodSync(folder, 0o700)
			this.#release = takeLock(join(folder, 'lastwright.lock'))
		} catch (error) {
			throw inWords(error, folder)
		}
		try {
			try {
				this.#openFile()
			} catch (error) {
				if (
					![sqliteCorrupt, sqliteNotADatabase].includes(
						(error as { errcode?: number }).errcode ?? 0,
					)
				)
					throw error
				this.#setAside()
				this.#openFile()
			}
			if (
				!this.isSetUp &&
				(existsSync(this.#headFile) || this.backups().length > 0) &&
				this.notices.length === 0
			)
				this.notices.push(
					`The records file in ${folder} is empty although records were kept here before. Do ` +
						'not set up anew: choose a backup instead.',
				)
		} catch (error) {
			this.#release()
			throw inWords(error, folder)
		}
	}
	get #file(): string {
		return join(this.#folder, fileName)
	}
	get #headFile(): string {
		return join(this.#folder, 'lastwright.head')
	}
	get backupFolder(): string {
		return this.#options.backupFolder ?? this.#folder
	}
	set backupFolder(folder: string) {
		this.#options.backupFolder = folder
	}
	#now(): string {
		return (this.#options.now?.() ?? new Date()).toISOString()
	}

	#openFile(): void {
		let db: DatabaseSync | undefined
		try {
			db = new DatabaseSync(this.#file)
			this.#statements.clear()
			chmodSync(this.#file, 0o600)
			db.exec(
				'PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA secure_delete=ON; CREATE ' +
					'TABLE IF NOT EXISTS meta (name TEXT PRIMARY KEY, value INTEGER NOT NULL) STRICT',
			)
			this.#db = db
			const found = schemaOf(db)
			if (found > 0 && found < migrations.length) {
				const made = copyAtOnce(db, this.#folder, this.#now(), 'before-upgrade')
				this.notices.push(
					`The records were brought up to this version. The copy from before is ${made.file}.`,
				)
			}
			migrate(db)
			this.#origin = this.#setting('origin') ?? ''
			if (!this.#origin) {
				this.#origin = randomBytes(6).toString('hex')
				this.#setSetting('origin', this.#origin)
			}
			this.#tick = this.#lastTick()
			this.#audit = new AuditTrail(db, this.#headFile, this.#origin)
			// a destruction whose last step a crash cut off
			if (this.#setting('purge') !== undefined) this.#purge()
		} catch (error) {
			db?.close()
			throw error
		}
	}
	/** A file that is no store any more is kept under another name, never deleted. */
	#setAside(): void {
		const stamp = this.#now().replace(/[:.]/g, '-')
		for (const end of ['', '-wal', '-shm'])
			if (existsSync(this.#file + end))
				renameSync(this.#file + end, `${this.#file}.damaged-${stamp}${end}`)
		const [newest] = this.backups()
		this.notices.push(
			'The records file was damaged as a whole and could not be opened. It was kept as ' +
				`${fileName}.damaged-${stamp}; nothing was deleted. ` +
				`${newest ? `Restore the newest backup, ${newest.file}.` : 'Restore a backup: choose the file on your stick or backup folder.'} ` +
				'Do not set up anew.',
		)
	}
	// node:sqlite binds a missing argument as NULL without a word: count and check first.
	#prepared(sql: string): StatementSync {
		let statement = this.#statements.get(sql)
		if (!statement) {
			statement = this.#db.prepare(sql)
			this.#statements.set(sql, statement)
		}
		return statement
	}
	#run(sql: string, ...values: (string | number | null | Uint8Array)[]): void {
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
		this.#prepared(sql).run(...(values as SQLInputValue[]))
	}
	/** All of it or none of it; one inside another belongs to the outer one. */
	together<T>(work: () => T): T {
		if (this.#depth > 0) return work()
		this.#settleSearch()
		this.#db.exec('BEGIN IMMEDIATE')
		this.#depth++
		this.#audited = false
		try {
			const result = work()
			this.#db.exec('COMMIT')
			this.#depth--
			if (this.#audited && this.#key) this.#audit.noteHead(this.#key)
			return result
		} catch (error) {
			this.#depth = 0
			if (this.#db.isTransaction) this.#db.exec('ROLLBACK')
			this.#audit.forget()
			this.#tick = this.#lastTick()
			throw error
		}
	}
	#lastTick(): number {
		return Number(
			(this.#db.prepare('SELECT max(tick) AS tick FROM record').get() as { tick: number | null })
				.tick ?? 0,
		)
	}
	#setting(name: string): string | undefined {
		const bytes = this.#settingBytes(name)
		return bytes && Buffer.from(bytes).toString('utf8')
	}
	#settingBytes(name: string): Uint8Array | undefined {
		return (
			this.#prepared('SELECT value FROM setting WHERE name = ?').get(name) as
				| { value: Uint8Array }
				| undefined
		)?.value
	}
	#setSetting(name: string, value: string | Uint8Array): void {
		this.#run(
			'INSERT INTO setting VALUES (?, ?) ON CONFLICT (name) DO UPDATE SET value = excluded.value',
			name,
			typeof value === 'string' ? Buffer.from(value, 'utf8') : value,
		)
	}
	#dropSetting(name: string): void {
		this.#run('DELETE FROM setting WHERE name = ?', name)
	}
	/** Wrong tries of unlocking, kept across restarts; no secret in it. */
	get tries(): { wrong: number; lastMs: number; waitMs: number } {
		const text = this.#setting('tries')
		return text
			? (JSON.parse(text) as { wrong: number; lastMs: number; waitMs: number })
			: { wrong: 0, lastMs: 0, waitMs: 0 }
	}
	set tries(value: { wrong: number; lastMs: number; waitMs: number }) {
		this.#setSetting('tries', JSON.stringify(value))
	}

	get isSetUp(): boolean {
		return this.#db.isOpen && this.#db.prepare('SELECT 1 FROM keyslot').get() !== undefined
	}
	get isOpen(): boolean {
		return this.#key !== undefined
	}
	get origin(): string {
		return this.#origin
	}
	get cost(): number {
		return this.#cost
	}
	has(id: string): boolean {
		return this.#prepared('SELECT 1 FROM record WHERE id = ?').get(id) !== undefined
	}
	#opened(): Uint8Array {
		if (!this.#key) throw new Error('The records are locked. Unlock them first.')
		return this.#key
	}
	/** The data key for opening many records one after another. */
	#quick(): KeyObject | Uint8Array {
		return this.#reader ?? this.#opened()
	}
	#slot(slot: string, w: Wrapped): void {
		this.#run(
			'INSERT INTO keyslot VALUES (?, ?, ?, ?) ON CONFLICT (slot) DO UPDATE SET cost = ' +
				'excluded.cost, salt = excluded.salt, sealed = excluded.sealed',
			slot,
			w.cost,
			w.salt,
			w.sealed,
		)
	}
	#wrapped(slot: string): Wrapped {
		const row = this.#db
			.prepare('SELECT cost, salt, sealed FROM keyslot WHERE slot = ?')
			.get(slot) as unknown as Wrapped | undefined
		if (!row) throw new Error('These records have not been set up yet.')
		return row
	}

	/**
	 * Makes the data key and its two wrappings; what `fill` writes belongs to the same transaction.
	 * @returns the recovery key to print; it is kept nowhere
	 */
	async setUp(passphrase: string, fill?: () => void): Promise<string> {
		if (this.isSetUp) throw new Error('These records are set up already. Unlock them instead.')
		const key = randomBytes(32)
		const recovery = randomBytes(20)
		const byPassphrase = await wrap(key, ownerSlot, passphraseBytes(passphrase), this.#cost)
		const byRecovery = await wrap(key, recoverySlot, recovery, this.#cost)
		this.together(() => {
			// a second set-up may have finished during the stretching: its key is in use and stays
			if (this.isSetUp) throw new Error('These records are set up already. Unlock them instead.')
			this.#slot(ownerSlot, byPassphrase)
			this.#slot(recoverySlot, byRecovery)
			this.#fitBox(key)
			this.#takeKey(key)
			try {
				fill?.()
			} catch (error) {
				this.lock()
				throw error
			}
		})
		return printRecoveryKey(recovery)
	}
	#takeKey(key: Uint8Array): void {
		this.#key = key
		this.#aboutKey = Buffer.from(hkdfSync('sha256', key, '', 'lastwright about', 32))
		// the cipher takes a key object wherever it takes bytes, and is spared making one for each of
		// thousands of records
		this.#reader = createSecretKey(key)
	}
	#fitBox(key: Uint8Array): void {
		const { publicKey, privateKey } = makeBox()
		this.#setSetting('box-public', publicKey)
		this.#setSetting('box-private', seal(key, 'box', 'setting', privateKey))
	}
	#keys(): Keys {
		return {
			dataKey: this.#key,
			boxPublic: this.#key ? undefined : this.#settingBytes('box-public'),
			boxPrivate: () =>
				unseal(
					this.#opened(),
					'box',
					'setting',
					this.#settingBytes('box-private') ?? new Uint8Array(),
				),
		}
	}
	/** Which person's slot a passphrase opens; slots of one salt cost one stretching. */
	async #find(passphrase: string): Promise<{ slot: string; key: Uint8Array } | undefined> {
		const rows = this.#db
			.prepare('SELECT slot, cost, salt, sealed FROM keyslot WHERE slot <> ? ORDER BY slot')
			.all(recoverySlot) as unknown as (Wrapped & { slot: string })[]
		const stretched = new Map<string, Uint8Array>()
		for (const row of rows) {
			const name = `${row.cost}:${Buffer.from(row.salt).toString('hex')}`
			const secret =
				stretched.get(name) ?? (await stretch(passphraseBytes(passphrase), row.salt, row.cost))
			stretched.set(name, secret)
			try {
				return { slot: row.slot, key: unseal(secret, row.slot, 'keyslot', row.sealed) }
			} catch (error) {
				if (!(error instanceof SealBroken)) throw error
			}
		}
		return undefined
	}
	/**
	 * @returns the slot of the person whose passphrase it is. @throws SealBroken on a wrong
	 * passphrase
	 */
	async unlock(passphrase: string): Promise<string> {
		const found = await this.#find(passphrase)
		if (!found) throw new SealBroken('no slot opens with this passphrase')
		this.#takeKey(found.key)
		this.#upgradeOpen()
		return found.slot
	}
	/**
	 * Gives the owner a new passphrase. @throws RangeError naming the mistyped group, SealBroken on
	 * another store's key
	 */
	async unlockWithRecoveryKey(typed: string, newPassphrase: string): Promise<string> {
		const key = await unwrap(this.#wrapped(recoverySlot), recoverySlot, readRecoveryKey(typed))
		const wrapped = await wrap(key, ownerSlot, passphraseBytes(newPassphrase), this.#cost)
		const taken = await this.#find(newPassphrase)
		if (taken && taken.slot !== ownerSlot)
			throw new RangeError('This passphrase cannot be used. Choose another one.')
		this.#slot(ownerSlot, wrapped)
		this.#takeKey(key)
		this.#upgradeOpen()
		return ownerSlot
	}
	/**
	 * Gives a person a passphrase, new or changed. @throws RangeError where another person has the
	 * same one
	 */
	async setPassphrase(slot: string, passphrase: string): Promise<void> {
		const key = this.#opened()
		const taken = await this.#find(passphrase)
		if (taken && taken.slot !== slot)
			throw new RangeError('This passphrase cannot be used. Choose another one.')
		// one salt for all people: an unlock stretches once, however many work here
		const { salt, cost } = this.#wrapped(ownerSlot)
		this.#slot(slot, await wrap(key, slot, passphraseBytes(passphrase), cost, salt))
	}
	/** Whether a passphrase is that of a slot. */
	async isPassphraseOf(slot: string, passphrase: string): Promise<boolean> {
		return (await this.#find(passphrase))?.slot === slot
	}
	dropSlot(slot: string): void {
		if (slot === ownerSlot || slot === recoverySlot)
			throw new Error('The owner and the recovery key cannot be taken off.')
		this.#run('DELETE FROM keyslot WHERE slot = ?', slot)
	}
	lock(): void {
		this.#settleSearch()
		this.#key?.fill(0)
		this.#key = undefined
		this.#aboutKey = undefined
		this.#reader = undefined
	}

	/**
	 * What a store of an earlier version lacks and only the key can give: letter box, anchor of the
	 * old records.
	 */
	#upgradeOpen(): void {
		const key = this.#opened()
		this.together(() => {
			if (!this.#settingBytes('box-public')) this.#fitBox(key)
			// the form stands behind the sealed bytes: the order column, which is 0 in form 1, spares
			// reading them all
			const old = this.#db
				.prepare('SELECT 1 FROM record INDEXED BY record_order WHERE tick = 0 AND form = 1 LIMIT 1')
				.get()
			const anchored = this.#db.prepare("SELECT 1 FROM record WHERE kind = 'anchor'").get()
			if (old && !anchored)
				this.append({ kind: 'anchor', at: this.#now(), value: { records: this.#oldRecords() } })
			const restored = this.#setting('restored')
			if (restored !== undefined) {
				this.audit({ function: 'restore', objectRef: restored })
				this.#dropSetting('restored')
			} else {
				const warning = this.#audit.headWarning(key)
				if (warning) this.notices.push(warning)
			}
			// the last ones only: a look at all of them would read the whole file at each unlock
			const newest = (
				this.#db
					.prepare('SELECT max(at) AS at FROM (SELECT at FROM record ORDER BY seq DESC LIMIT ?)')
					.get(clockLooksBack) as { at: string | null }
			).at
			if (newest !== null && newest > this.#now())
				this.notices.push(
					`This PC's clock shows ${this.#now().slice(0, 16).replace('T', ' ')} UTC, yet a ` +
						`record was written at ${newest.slice(0, 16).replace('T', ' ')} UTC. Check the date ` +
						'and time of this PC before signing. The order of the records is kept either way.',
				)
		})
	}
	#oldRecords(): [string, string][] {
		return (
			this.#db
				.prepare('SELECT id, kind, at, follows, sealed FROM record WHERE form = 1 ORDER BY seq')
				.all() as unknown as Row[]
		).map((row) => [
			row.id,
			createHash('sha256')
				.update(JSON.stringify([row.id, row.kind, row.at, row.follows]))
				.update(row.sealed)
				.digest('hex')
				.slice(0, 32),
		])
	}
	/** Appends one record with its card and its audit row. @returns its id */
	append(record: NewRecord): string {
		const id = record.id ?? randomUUID()
		if (!uuid.test(id)) throw new TypeError('store: a record id is a random UUID')
		this.together(() => {
			const row: Omit<Row, 'sealed'> = {
				id,
				kind: record.kind,
				at: record.at,
				follows: record.follows ?? null,
				form: 2,
				origin: this.#origin,
				tick: ++this.#tick,
			}
			this.#run(
				'INSERT INTO record (id, kind, at, follows, sealed, form, origin, tick) VALUES (?, ?, ' +
					'?, ?, ?, ?, ?, ?)',
				id,
				row.kind,
				row.at,
				row.follows,
				seal(this.#opened(), id, row.kind, encode(record.value), bound(row)),
				row.form,
				row.origin,
				row.tick,
			)
			if (record.about !== undefined || record.thing !== undefined)
				this.putCard(id, record.kind, record)
			this.audit({
				function: record.does ?? (record.follows === undefined ? 'create' : 'update'),
				objectRef: `${record.kind}:${id}`,
				...(record.about === undefined ? {} : { playerId: record.about }),
			})
		})
		return id
	}
	/** The card of a record: made with it, or made again from it. */
	putCard(
		id: string,
		kind: Kind,
		{ about, thing, card }: Pick<NewRecord, 'about' | 'thing' | 'card'>,
	): void {
		this.#run(
			'INSERT INTO card VALUES (?, ?, ?, ?, ?) ON CONFLICT (record) DO UPDATE SET about = ' +
				'excluded.about, thing = excluded.thing, sealed = excluded.sealed',
			id,
			kind,
			this.#digest('about', about),
			this.#digest('thing', thing),
			seal(this.#opened(), id, `card ${kind}`, encode(card ?? null)),
		)
	}
	#digest(what: string, id: string | undefined): string | null {
		this.#opened()
		return id === undefined || !this.#aboutKey
			? null
			: createHmac('sha256', this.#aboutKey)
					.update(`${what}:${id}`)
					.digest('base64url')
					.slice(0, 22)
	}
	/** Records of a kind that have no card yet (written by an earlier version). */
	withoutCard(kinds: readonly Kind[]): { id: string; kind: Kind; follows: string | undefined }[] {
		const missing = kinds.filter(
			(kind) => this.#countOf('record', kind) !== this.#countOf('card', kind),
		)
		return missing.flatMap((kind) =>
			(
				this.#db
					.prepare(
						'SELECT id, follows FROM record WHERE kind = ? AND NOT EXISTS (SELECT 1 FROM card ' +
							'WHERE card.record = record.id) ORDER BY tick, seq',
					)
					.all(kind) as { id: string; follows: string | null }[]
			).map((row) => ({ id: row.id, kind, follows: row.follows ?? undefined })),
		)
	}
	/** Counted from an index alone, however long the records are. */
	#countOf(table: 'record' | 'card', kind: Kind): number {
		return Number(
			(
				this.#db
					.prepare(
						`SELECT count(*) AS n FROM ${table} INDEXED BY ` +
							`${table === 'record' ? 'record_order' : 'card_about'} WHERE kind = ?`,
					)
					.get(kind) as { n: number }
			).n,
		)
	}
	/**
	 * Cards about a player, in order of writing. A damaged card is skipped: its record is the truth.
	 */
	cardsAbout(kind: Kind, playerId: string): OpenCard[] {
		return this.#cards('about', kind, this.#digest('about', playerId))
	}
	/** Cards of the versions of a thing, in order of writing. */
	cardsOf(kind: Kind, thing: string): OpenCard[] {
		return this.#cards('thing', kind, this.#digest('thing', thing))
	}
	#cards(column: 'about' | 'thing', kind: Kind, digest: string | null): OpenCard[] {
		const key = this.#quick()
		return (
			this.#prepared(
				'SELECT card.record AS record, card.sealed AS sealed FROM card JOIN record ON record.id ' +
					`= card.record WHERE card.${column} = ? AND card.kind = ? ORDER BY record.tick, ` +
					'record.origin, record.seq',
			).all(digest, kind) as unknown as { record: string; sealed: Uint8Array }[]
		).flatMap(({ record, sealed }) => {
			try {
				return [{ record, kind, card: decode(unseal(key, record, `card ${kind}`, sealed)) }]
			} catch (error) {
				if (error instanceof SealBroken) return []
				throw error
			}
		})
	}
	/** Time of the last entry about each player of the list, from the order columns alone. */
	lastEntries(playerIds: readonly string[]): Map<string, { first: string; last: string }> {
		const found = new Map(
			(
				this.#db
					.prepare(
						'SELECT card.about AS about, min(record.at) AS first, max(record.at) AS last FROM ' +
							'card JOIN record ON record.id = card.record WHERE card.about IS NOT NULL AND ' +
							"card.kind IN ('player', 'visit', 'visit-note') GROUP BY card.about",
					)
					.all() as { about: string; first: string; last: string }[]
			).map((row) => [row.about, { first: row.first, last: row.last }]),
		)
		return new Map(
			playerIds.flatMap((id) => {
				const entry = found.get(this.#digest('about', id) ?? '')
				return entry ? [[id, entry] as const] : []
			}),
		)
	}
	/**
	 * Adds a row to the audit trail. Where the disk is full or read-only a reading is not refused:
	 * the row is held and written as soon as there is room.
	 */
	audit(entry: Partial<AuditEntry> & Pick<AuditEntry, 'function'>): void {
		const actor = this.#options.actor?.() ?? { personId: null, role: 'nobody', purpose: '' }
		const now = this.#options.now?.() ?? new Date()
		const whole: AuditEntry = {
			utcTime: now.toISOString(),
			localOffsetMinutes: -now.getTimezoneOffset(),
			playerId: null,
			objectRef: '',
			outcome: 'done',
			...actor,
			...entry,
		}
		if (whole.function === 'search') this.#holdSearch(whole)
		else this.#writeRow(whole)
	}
	/**
	 * Letters added to or taken off a query within a moment belong to one search; another query or
	 * person does not.
	 */
	#holdSearch(entry: AuditEntry): void {
		const before = this.#typed
		const goesOn =
			before !== undefined &&
			before.entry.personId === entry.personId &&
			performance.now() - before.since < searchLongestMs &&
			(entry.objectRef.startsWith(before.entry.objectRef) ||
				before.entry.objectRef.startsWith(entry.objectRef))
		if (!goesOn) this.#settleSearch()
		clearTimeout(before?.timer)
		this.#typed = {
			entry,
			since: goesOn ? before.since : performance.now(),
			timer: setTimeout(() => this.#settleSearch(), searchSettledMs).unref(),
		}
	}
	/** Writes the row of the last search; whatever is noted next stands behind it. */
	#settleSearch(): void {
		const typed = this.#typed
		if (!typed) return
		this.#typed = undefined
		clearTimeout(typed.timer)
		// a failure here is nobody's call: the row waits and is written with the next one
		try {
			this.#writeRow(typed.entry)
		} catch {
			this.#held.push(typed.entry)
		}
	}
	#writeRow(whole: AuditEntry): void {
		const inside = this.#depth > 0
		try {
			this.together(() => {
				for (const held of this.#held) this.#audit.add(held, this.#keys())
				this.#audit.add(whole, this.#keys())
				this.#audited = true
			})
			this.#held = []
		} catch (error) {
			if (inside || !diskTrouble(error)) throw error
			this.#held.push(whole)
		}
	}
	get auditWaiting(): number {
		return this.#held.length
	}
	auditPage(before: number, limit: number, wanted?: (row: OpenRow) => boolean): OpenRow[] {
		this.#opened()
		this.#settleSearch()
		return this.#audit.page(before, limit, this.#keys(), wanted)
	}
	/**
	 * The chain, the records it names, and the records of earlier versions: a sentence for each
	 * fault.
	 */
	verify(destroyed: ReadonlySet<string>): { rows: number; problems: string[] } {
		this.#opened()
		this.#settleSearch()
		const named: { seq: number; kind: string; id: string }[] = []
		const result = this.#audit.verify(this.#keys(), (row) => {
			const [kind = '', id = ''] = row.objectRef.split(':')
			if (
				uuid.test(id) &&
				row.outcome === 'done' &&
				[
					'create',
					'update',
					'sign',
					'amend',
					'send',
					'export',
					'print',
					'merge',
					'destroy',
				].includes(row.function)
			)
				named.push({ seq: row.seq, kind, id })
		})
		const has = this.#db.prepare('SELECT 1 FROM record WHERE id = ?')
		for (const { seq, kind, id } of named)
			if (kind !== 'draft' && !destroyed.has(id) && !has.get(id))
				result.problems.push(
					`Record ${id} (${kind}), written in row ${seq}, is gone from the records.`,
				)
		const anchor = this.#db.prepare("SELECT id FROM record WHERE kind = 'anchor'").get() as
			| { id: string }
			| undefined
		if (anchor) {
			const now = new Map(this.#oldRecords())
			for (const [id, digest] of (this.read(anchor.id).value as { records: [string, string][] })
				.records) {
				if (destroyed.has(id)) continue
				if (!now.has(id))
					result.problems.push(
						`Record ${id}, written by an earlier version, is gone from the records.`,
					)
				else if (now.get(id) !== digest)
					result.problems.push(`Record ${id}, written by an earlier version, was altered.`)
			}
		}
		return result
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
		const key = this.#quick()
		for (const kind of kinds)
			for (const row of this.#db
				.prepare(`SELECT ${columns} FROM record WHERE kind = ? ORDER BY tick, origin, seq`)
				.iterate(kind) as unknown as Iterable<Row>) {
				let record: StoredRecord
				try {
					record = openRow(key, row)
				} catch (error) {
					if (!(error instanceof SealBroken)) throw error
					damaged.push(damagedWords(row))
					continue
				}
				use(record)
			}
	}
	/** One record by id. @throws Error where there is none, SealBroken where it is damaged */
	read(id: string): StoredRecord {
		const row = this.#prepared(`SELECT ${columns} FROM record WHERE id = ?`).get(id) as unknown as
			| Row
			| undefined
		if (!row) throw new Error('There is no such record.')
		return openRow(this.#opened(), row)
	}
	/** A small sealed note of this store itself, never merged. */
	sealedSetting(name: string): unknown {
		const bytes = this.#settingBytes(name)
		return bytes && this.#key ? decode(unseal(this.#key, name, 'setting', bytes)) : undefined
	}
	setSealedSetting(name: string, value: unknown): void {
		this.#setSetting(name, seal(this.#opened(), name, 'setting', encode(value)))
	}
	get recordCount(): number {
		return Number((this.#db.prepare('SELECT count(*) AS n FROM record').get() as { n: number }).n)
	}
	/**
	 * Records as they travel, in the common order. `wanted` gets the kind and the player it is about;
	 * players are known by `playerIds`.
	 */
	carry(
		playerIds: readonly string[],
		wanted: (kind: Kind, about: string | undefined) => boolean,
	): Carried[] {
		const key = this.#opened()
		const known = new Map(playerIds.map((id) => [this.#digest('about', id), id]))
		const found: Carried[] = []
		for (const row of this.#db
			.prepare(
				`SELECT ${columns
					.split(', ')
					.map((one) => `record.${one} AS ${one}`)
					.join(
						', ',
					)}, card.about AS about, card.thing AS thing, card.sealed AS card FROM record LEFT JOIN card ON card.record = record.id ORDER BY record.tick, record.origin, record.seq`,
			)
			.iterate() as unknown as Iterable<
			Row & { about: string | null; thing: string | null; card: Uint8Array | null }
		>) {
			const about = row.about === null ? undefined : known.get(row.about)
			if ((row.about !== null && about === undefined) || !wanted(row.kind, about)) continue
			const record = openRow(key, row)
			const things =
				row.thing === null || typeof record.value !== 'object' || record.value === null
					? []
					: Object.values(record.value).filter((one): one is string => typeof one === 'string')
			const thing = things.find((one) => this.#digest('thing', one) === row.thing)
			found.push({
				...record,
				...(about === undefined ? {} : { about }),
				...(thing === undefined ? {} : { thing }),
				...(row.card === null
					? {}
					: { card: decode(unseal(key, row.id, `card ${row.kind}`, row.card)) }),
			})
		}
		return found
	}
	/** Whether a record that comes in is here already, whole and the same. */
	holds(one: Carried): 'no' | 'same' | 'other' {
		const row = this.#prepared(`SELECT ${columns} FROM record WHERE id = ?`).get(
			one.id,
		) as unknown as Row | undefined
		if (!row) return 'no'
		const bare = ({
			id,
			kind,
			at,
			follows,
			origin,
			tick,
			value,
		}: Omit<Carried, 'kind'> & { kind: string }) =>
			canonicalJson({ id, kind, at, follows, origin, tick, value })
		const card = this.#prepared('SELECT about FROM card WHERE record = ?').get(one.id) as
			| { about: string | null }
			| undefined
		return bare(openRow(this.#opened(), row)) === bare(one) &&
			(card?.about ?? null) === this.#digest('about', one.about)
			? 'same'
			: 'other'
	}
	/** Takes in a record of another store: author, time and place in the order stay as they are. */
	takeIn(one: Carried): void {
		if (!uuid.test(one.id)) throw new TypeError('store: a record id is a random UUID')
		this.together(() => {
			const kind = one.kind as Kind
			const row: Omit<Row, 'sealed'> = {
				id: one.id,
				kind,
				at: one.at,
				follows: one.follows ?? null,
				form: 2,
				origin: one.origin,
				tick: one.tick,
			}
			this.#run(
				'INSERT INTO record (id, kind, at, follows, sealed, form, origin, tick) VALUES (?, ?, ' +
					'?, ?, ?, ?, ?, ?)',
				one.id,
				kind,
				row.at,
				row.follows,
				seal(this.#opened(), one.id, kind, encode(one.value), bound(row)),
				row.form,
				row.origin,
				row.tick,
			)
			this.#tick = Math.max(this.#tick, one.tick)
			if (one.about !== undefined || one.thing !== undefined) this.putCard(one.id, kind, one)
			this.audit({
				function: 'merge',
				objectRef: `${kind}:${one.id}`,
				...(one.about === undefined ? {} : { playerId: one.about }),
			})
		})
	}
	saveDraft(id: string, at: string, value: unknown): void {
		this.#run(
			'INSERT INTO draft (id, sealed, at) VALUES (?, ?, ?) ON CONFLICT (id) DO UPDATE SET ' +
				'sealed = excluded.sealed, at = excluded.at',
			id,
			seal(this.#opened(), id, 'draft', encode(value), [at]),
			at,
		)
	}
	/** @returns undefined where there is no such draft. @throws SealBroken where it is damaged */
	draft(id: string): { at: string; value: unknown } | undefined {
		const row = this.#db.prepare('SELECT sealed, at FROM draft WHERE id = ?').get(id) as
			| { sealed: Uint8Array; at: string }
			| undefined
		if (!row) return undefined
		const key = this.#opened()
		try {
			return { at: row.at, value: decode(unseal(key, id, 'draft', row.sealed, [row.at])) }
		} catch (error) {
			// drafts of the first version did not bind their time
			if (error instanceof SealBroken)
				return { at: row.at, value: decode(unseal(key, id, 'draft', row.sealed)) }
			throw error
		}
	}
	draftIds(): string[] {
		return (this.#db.prepare('SELECT id FROM draft ORDER BY at').all() as { id: string }[]).map(
			(row) => row.id,
		)
	}
	dropDraft(id: string): void {
		this.#run('DELETE FROM draft WHERE id = ?', id)
	}

	/** Ids of all records about a player. */
	recordsAbout(playerId: string): string[] {
		return (
			this.#db
				.prepare('SELECT record FROM card WHERE about = ?')
				.all(this.#digest('about', playerId)) as { record: string }[]
		).map((row) => row.record)
	}
	/**
	 * Removes records for good and keeps what `register` writes, in one transaction; then the freed
	 * bytes are overwritten.
	 * The trigger that forbids deletion is lifted inside the transaction only.
	 */
	destroy(recordIds: readonly string[], draftIds: readonly string[], register: () => void): void {
		this.together(() => {
			this.#db.exec('DROP TRIGGER record_kept')
			for (const id of recordIds) {
				this.#run('DELETE FROM record WHERE id = ?', id)
				this.#run('DELETE FROM card WHERE record = ?', id)
			}
			for (const id of draftIds) this.dropDraft(id)
			this.#db.exec(
				"CREATE TRIGGER record_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record " +
					"is never deleted'); END",
			)
			this.#setSetting('purge', '1')
			register()
		})
		this.#purge()
	}
	#purge(): void {
		this.#statements.clear()
		this.#db.exec('VACUUM')
		this.#db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get()
		this.#dropSetting('purge')
		this.#db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get()
	}

	backups(): (BackupName & { folder: string })[] {
		return [...new Set([this.backupFolder, this.#folder])]
			.flatMap((folder) => listBackups(folder).map((name) => ({ ...name, folder })))
			.sort((a, b) => (a.at < b.at ? 1 : -1))
	}
	/** A dated backup, checked record by record; one at a time. @throws BackupRefused in words */
	backup(reason: BackupName['reason'], folder = this.backupFolder): Promise<BackupName> {
		const next = this.#backingUp.then(async () => {
			const key = this.#key && Buffer.from(this.#key)
			const made = await makeBackup(this.#file, folder, this.#now(), reason, async (db) => {
				if (key) await this.#checkAll(db, key)
			})
			tidy(folder)
			return made
		})
		this.#backingUp = next.catch(() => {})
		return next
	}
	/** Resolves when no backup is being written. */
	async backupsDone(): Promise<void> {
		await this.#backingUp
	}
	/** Opens every record of a copy that this store can open itself. */
	async #checkAll(db: DatabaseSync, key: Uint8Array): Promise<void> {
		let from = -1
		for (;;) {
			const rows = db
				.prepare(`SELECT seq, ${columns} FROM record WHERE seq > ? ORDER BY seq LIMIT ?`)
				.all(from, checkAtATime) as unknown as (Row & { seq: number })[]
			if (rows.length === 0) return
			for (const row of rows) {
				try {
					unseal(key, row.id, row.kind, row.sealed, bound(row))
				} catch {
					// a record damaged here already is no fault of the copy
					if (this.#readable(row.id, key))
						throw new BackupRefused(
							`The copy does not hold record ${row.id} whole. The stick or disk may be failing: ` +
								'use another one.',
						)
				}
			}
			from = rows.at(-1)?.seq ?? from
			await new Promise((resolve) => setImmediate(resolve))
		}
	}
	#readable(id: string, key: Uint8Array): boolean {
		if (!this.#db.isOpen) return false
		const row = this.#db.prepare(`SELECT ${columns} FROM record WHERE id = ?`).get(id) as unknown as
			| Row
			| undefined
		if (!row) return false
		try {
			openRow(key, row)
			return true
		} catch {
			return false
		}
	}
	/**
	 * What a backup holds. With the key open the players are counted and named; else only what stands
	 * in clear. @throws BackupRefused
	 */
	preview(file: string): {
		schema: number
		records: number
		visits: number
		lastAt?: string
		sameClinic?: boolean
		players?: StoredRecord[]
	} {
		const { db, schema, records, kinds, lastAt } = openChecked(file)
		try {
			const key = this.#key
			let players: StoredRecord[] | undefined
			let sameClinic: boolean | undefined
			if (key) {
				const order = schema > 1 ? 'tick, seq' : 'seq'
				const have =
					schema > 1 ? columns : "id, kind, at, follows, sealed, 1 AS form, '' AS origin, 0 AS tick"
				const one = db
					.prepare(`SELECT ${have} FROM record ORDER BY seq LIMIT 1`)
					.get() as unknown as Row | undefined
				try {
					if (one) {
						openRow(key, one)
						sameClinic = true
					}
				} catch {
					sameClinic = false
				}
				players = []
				if (sameClinic)
					for (const row of db
						.prepare(`SELECT ${have} FROM record WHERE kind = 'player' ORDER BY ${order}`)
						.iterate() as unknown as Iterable<Row>)
						try {
							players.push(openRow(key, row))
						} catch {
							/* named when it is opened */
						}
			}
			return {
				schema,
				records,
				visits: kinds.visit ?? 0,
				...(lastAt === undefined ? {} : { lastAt }),
				...(sameClinic === undefined ? {} : { sameClinic }),
				...(players ? { players } : {}),
			}
		} finally {
			db.close()
		}
	}
	/**
	 * Puts a backup in the place of the records. What stands now is backed up first and never lost.
	 * @throws BackupRefused
	 */
	async restore(file: string): Promise<{ before?: BackupName }> {
		const looked = openChecked(file)
		const { setUp } = looked
		looked.db.close()
		if (!setUp)
			throw new BackupRefused(
				'This backup holds no records: it was made before the clinic was set up. Choose another ' +
					'one.',
			)
		if (this.isSetUp && this.preview(file).sameClinic === false)
			throw new BackupRefused(
				'This backup belongs to other records: the key of this clinic does not open it. Choose ' +
					'one of this clinic.',
			)
		const coming = `${this.#file}.restoring`
		for (const end of ['', '-wal', '-shm', '-journal']) rmSync(coming + end, { force: true })
		copyFileSync(file, coming)
		chmodSync(coming, 0o600)
		const db = new DatabaseSync(coming)
		try {
			migrate(db)
			db.prepare(
				"INSERT INTO setting VALUES ('restored', ?) ON CONFLICT (name) DO UPDATE SET value = " +
					'excluded.value',
			).run(Buffer.from(`backup of ${looked.lastAt ?? 'unknown time'}`))
			// the copy counts wrong tries anew; its origin stays, as the records do
			db.exec("DELETE FROM setting WHERE name = 'tries'; PRAGMA journal_mode=DELETE")
		} finally {
			db.close()
		}
		openChecked(coming).db.close()
		const before = this.isSetUp ? await this.backup('before-restore') : undefined
		this.lock()
		this.#db.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get()
		this.#db.close()
		try {
			// an empty log of the old file must not be read into the new one
			for (const end of ['-wal', '-shm']) rmSync(this.#file + end, { force: true })
			putInPlace(coming, this.#file)
			this.#audit.dropHead()
		} finally {
			this.#held = []
			this.notices.length = 0
			this.#openFile()
		}
		return before ? { before } : {}
	}
	close(): void {
		this.lock()
		this.#audit.close()
		if (this.#db.isOpen) this.#db.close()
		this.#release()
	}
}
function schemaOf(db: DatabaseSync): number {
	return Number(
		(
			db.prepare("SELECT value FROM meta WHERE name = 'schema'").get() as
				| { value: number }
				| undefined
		)?.value ?? 0,
	)
}
function migrate(db: DatabaseSync): void {
	const found = schemaOf(db)
	if (found > migrations.length)
		throw new Error(
			`These records were written by a newer Lastwright (schema ${found}; this one knows up to ` +
				`${migrations.length}). Install the newer version to open them.`,
		)
	for (let step = found; step < migrations.length; step++) {
		db.exec('BEGIN IMMEDIATE')
		try {
			db.exec(migrations[step] ?? '')
			db.prepare(
				"INSERT INTO meta VALUES ('schema', ?) ON CONFLICT (name) DO UPDATE SET value = " +
					'excluded.value',
			).run(step + 1)
			db.exec('COMMIT')
		} catch (error) {
			if (db.isTransaction) db.exec('ROLLBACK')
			throw error
		}
	}
}
/** The failures of a folder in words: which, and what to do. */
function inWords(error: unknown, folder: string): Error {
	const { code, errcode } = error as { code?: string; errcode?: number }
	if (code === 'EROFS' || code === 'EACCES' || code === 'EPERM' || errcode === 8 || errcode === 14)
		return new Error(
			`The data folder ${folder} cannot be written to. Make it writable, or start Lastwright ` +
				'with another folder. Nothing was changed.',
		)
	if (code === 'ENOSPC' || errcode === 13)
		return new Error(
			`The disk that holds ${folder} is full. Free some space and start Lastwright again. ` +
				'Nothing was changed.',
		)
	return error instanceof Error ? error : new Error(String(error))
}
export const idleMs = (minutes: number): number => minutes * minuteMs
