/** Backups: a dated copy of the store, opened and checked before it counts. */
import { chmodSync, existsSync, mkdirSync, rmSync, statfsSync, statSync } from 'node:fs'
import { basename, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { pathToFileURL } from 'node:url'
import { type BackupName, nameBackup } from '../../shared/desk/records/backup-name.ts'
import type { RefusalCode } from '../../shared/desk/workplace/refusal.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { isRuined } from './disk.ts'
import { putInPlace } from './files.ts'
import { migrations } from './migrations.table.ts'
import { schemaOf } from './schema.ts'

/** Room wanted on the disk: the size of the store and what its side files may hold besides. */
const roomFactor = 1.1
const leastRoomBytes = 200_000
/** The step of the schema from which a store names itself. */
const firstWithOrigin = 2

/** A backup that cannot be made or used: why, and in words. */
export class BackupRefused extends Error {
	readonly why: RefusalCode
	constructor(words: string, why: RefusalCode = 'backups.backup-refused') {
		super(words)
		this.why = why
	}
}
/** The records file is damaged so that it cannot be copied whole. */
export class SourceRuined extends BackupRefused {}
/** What a file holds that is a whole store, as far as it stands in clear; and the file, open. */
interface Checked {
	schema: number
	records: number
	/** how many records of each kind */
	kinds: Record<string, number>
	/** time of the last record, ISO 8601 */
	lastAt: string | undefined
	setUp: boolean
	db: DatabaseSync
}
/**
 * Opens a file as a store, read-only, and looks whether it is whole. @returns it still open.
 * @throws BackupRefused in words
 */
export function openChecked(file: string): Checked {
	const name = basename(file)
	if (!existsSync(file))
		throw new BackupRefused(
			`There is no file ${name} at that place. Check that the stick is plugged in and the name ` +
				'is right.',
			'places.no-file',
		)
	if (!statSync(file).isFile())
		throw new BackupRefused(
			`${name} is not a file. Choose one of the backups by its name.`,
			'backups.not-a-file',
		)
	let db: DatabaseSync | undefined
	try {
		// WAL cannot be opened on a read-only folder: immutable tells SQLite that nobody writes here
		const address = pathToFileURL(file)
		address.searchParams.set('immutable', '1')
		db = new DatabaseSync(address, { readOnly: true })
		const check = db.prepare('PRAGMA integrity_check(1)').get() as { integrity_check: string }
		if (check.integrity_check !== 'ok')
			throw new BackupRefused(
				`${name} is damaged (${check.integrity_check.slice(0, 80)}). Choose another backup.`,
				'backups.unreadable-file',
			)
		const schema = schemaOf(db)
		mustBeKnown(name, schema)
		return { schema, ...inClear(db), db }
	} catch (error) {
		db?.close()
		if (error instanceof BackupRefused) throw error
		throw new BackupRefused(
			`${name} cannot be read as a backup: it is damaged, cut short, or another kind of file. ` +
				'Choose another one.',
			'backups.unreadable-file',
		)
	}
}
function mustBeKnown(name: string, schema: number): void {
	if (schema < 1)
		throw new BackupRefused(
			`${name} is not a backup of Lastwright. Choose a file whose name begins with ` +
				'lastwright-backup.',
			'backups.not-a-backup',
		)
	if (schema > migrations.length)
		throw new BackupRefused(
			`${name} was written by a newer Lastwright (schema ${schema}). Install the newer ` +
				'version to use it.',
			'backups.newer-backup',
		)
}
/** What a store tells without any key. */
function inClear(db: DatabaseSync): Omit<Checked, 'schema' | 'db'> {
	const kinds: Record<string, number> = {}
	for (const { kind, total } of db
		.prepare('SELECT kind, count(*) AS total FROM record GROUP BY kind')
		.all() as { kind: string; total: number }[])
		kinds[kind] = total
	const { last } = db.prepare('SELECT max(at) AS last FROM record').get() as {
		last: string | null
	}
	return {
		records: Object.values(kinds).reduce((sum, count) => sum + count, 0),
		kinds,
		lastAt: last ?? undefined,
		setUp: db.prepare('SELECT 1 FROM keyslot').get() !== undefined,
	}
}
/** What a backup is to be called once it stands. */
export type Named = Omit<BackupName, 'file' | 'damaged'>

/**
 * Copies a store file while it is in use, looks into the copy, then gives it its name: one that
 * holds damage says so.
 * @param look looks into the copy, by its path. It answers whether a record in it is damaged, and
 * throws where the copy is worse than what it was made of
 * @throws BackupRefused in words
 */
export async function makeBackup(
	source: string,
	folder: string,
	named: Named,
	look: (part: string) => Promise<{ damaged: boolean }>,
): Promise<BackupName> {
	// the last folder only: a stick that is not plugged in must not be made up, and a deep mkdir in
	// /proc never ends
	if (!existsSync(folder)) mkdirSync(folder, { mode: 0o700 })
	mustHaveRoom(source, folder)
	const part = join(folder, `${nameBackup(named).file}.part`)
	rmSync(part, { force: true })
	try {
		copyInto(source, part)
		plainJournal(part)
		const made = await look(part)
		openChecked(part).db.close()
		const name = nameBackup({ ...named, ...(made.damaged && { damaged: true }) })
		putInPlace(part, join(folder, name.file))
		return name
	} catch (error) {
		rmSync(part, { force: true })
		throw error
	}
}
/** Asked first: the answer is then in words, and no half copy is begun. @throws BackupRefused */
function mustHaveRoom(source: string, folder: string): void {
	const { bavail, bsize } = statfsSync(folder)
	if (bavail * bsize < statSync(source).size * roomFactor + leastRoomBytes)
		throw new BackupRefused(
			`There is no room for a backup in ${folder}. Free some space or use another stick. No ` +
				'half backup was left there.',
			'places.no-room',
		)
}
function copyInto(source: string, part: string): void {
	const reader = new DatabaseSync(source, { readOnly: true })
	try {
		// one statement: it ends with an error where the disk fills up meanwhile, and the copy has no
		// free pages
		reader.prepare('VACUUM INTO ?').run(part)
	} catch (error) {
		if (!isRuined(error)) throw error
		throw new SourceRuined(
			'The records file is damaged so that it cannot be copied whole. No backup was made, and ' +
				'none was deleted. Look into the newest backup below and restore it.',
		)
	} finally {
		reader.close()
	}
	chmodSync(part, 0o600)
}
/** A copy stands alone: no side files wanted beside it. */
function plainJournal(file: string): void {
	const db = new DatabaseSync(file)
	try {
		db.exec('PRAGMA journal_mode=DELETE')
	} finally {
		db.close()
	}
}
/** The copy before an upgrade: made at once, as nothing may happen before it stands. */
export function copyAtOnce(
	db: Pick<DatabaseSync, 'prepare'>,
	folder: string,
	at: string,
	reason: BackupName['reason'],
): BackupName {
	const name = nameBackup({ at, reason, ...present({ origin: originIn(db) }) })
	const part = join(folder, `${name.file}.part`)
	rmSync(part, { force: true })
	db.prepare('VACUUM INTO ?').run(part)
	chmodSync(part, 0o600)
	openChecked(part).db.close()
	putInPlace(part, join(folder, name.file))
	return name
}
/** Whose store a file is; undefined where its schema is too old to say. */
function originIn(db: Pick<DatabaseSync, 'prepare'>): string | undefined {
	if (schemaOf(db) < firstWithOrigin) return undefined
	const row = db.prepare("SELECT value FROM setting WHERE name = 'origin'").get() as
		| { value: Uint8Array }
		| undefined
	return row && Buffer.from(row.value).toString('utf8')
}
