/** Backups: a dated copy of the store, opened and checked before it counts. */
import {
	chmodSync,
	existsSync,
	mkdirSync,
	readdirSync,
	rmSync,
	statfsSync,
	statSync,
} from 'node:fs'
import { basename, join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { pathToFileURL } from 'node:url'
import { type BackupName, backupReasons, notKept } from '../../shared/desk/records/keep.ts'
import { putInPlace } from './files.ts'
import { migrations } from './migrations.table.ts'
import { schemaOf } from './schema.ts'

const namePattern =
	/^lastwright-backup-(\d{4}-\d\d-\d\d)T(\d\d)-(\d\d)-(\d\d)-(\d{3})Z-([a-z-]+)\.db$/
const partPattern = /^lastwright-backup-.*\.db\.part(-journal|-wal|-shm)?$/
/** Room wanted on the disk: the size of the store and what its side files may hold besides. */
const roomFactor = 1.1
const leastRoomBytes = 200_000
/** A backup that cannot be made or used, in words. */
export class BackupRefused extends Error {}
const backupFileName = (at: string, reason: BackupName['reason']): string =>
	`lastwright-backup-${at.replace(/[:.]/g, '-')}-${reason}.db`
/** Backups in a folder by their names; anything else there is left alone. */
export function listBackups(folder: string): BackupName[] {
	if (!existsSync(folder)) return []
	return readdirSync(folder)
		.flatMap((file) => {
			const [, day, hour, minute, second, milli, reason] = namePattern.exec(file) ?? []
			return day && (backupReasons as readonly string[]).includes(reason ?? '')
				? [
						{
							file,
							at: `${day}T${hour}:${minute}:${second}.${milli}Z`,
							reason: reason as BackupName['reason'],
						},
					]
				: []
		})
		.sort((earlier, later) => (earlier.at < later.at ? 1 : -1))
}
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
		)
	if (!statSync(file).isFile())
		throw new BackupRefused(`${name} is not a file. Choose one of the backups by its name.`)
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
		)
	}
}
function mustBeKnown(name: string, schema: number): void {
	if (schema < 1)
		throw new BackupRefused(
			`${name} is not a backup of Lastwright. Choose a file whose name begins with ` +
				'lastwright-backup.',
		)
	if (schema > migrations.length)
		throw new BackupRefused(
			`${name} was written by a newer Lastwright (schema ${schema}). Install the newer ` +
				'version to use it.',
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
/**
 * Copies a store file while it is in use, checks the copy, then gives it its name.
 * @param at ISO 8601
 * @param check looks into the open copy and throws where it is not whole
 * @throws BackupRefused in words
 */
export async function makeBackup(
	source: string,
	folder: string,
	at: string,
	reason: BackupName['reason'],
	check: (db: DatabaseSync) => Promise<void>,
): Promise<BackupName> {
	// the last folder only: a stick that is not plugged in must not be made up, and a deep mkdir in
	// /proc never ends
	if (!existsSync(folder)) mkdirSync(folder, { mode: 0o700 })
	const file = backupFileName(at, reason)
	const part = join(folder, `${file}.part`)
	rmSync(part, { force: true })
	// asked first: the answer is then in words, and no half copy is begun
	const { bavail, bsize } = statfsSync(folder)
	if (bavail * bsize < statSync(source).size * roomFactor + leastRoomBytes)
		throw new BackupRefused(
			`There is no room for a backup in ${folder}. Free some space or use another stick. No ` +
				'half backup was left there.',
		)
	const reader = new DatabaseSync(source, { readOnly: true })
	try {
		// one statement: it ends with an error where the disk fills up meanwhile, and the copy has no
		// free pages
		reader.prepare('VACUUM INTO ?').run(part)
	} catch (error) {
		rmSync(part, { force: true })
		throw error
	} finally {
		reader.close()
	}
	await finish(part, join(folder, file), check)
	return { file, at, reason }
}
async function finish(
	part: string,
	file: string,
	check: (db: DatabaseSync) => Promise<void>,
): Promise<void> {
	try {
		chmodSync(part, 0o600)
		plainJournal(part)
		const { db } = openChecked(part)
		try {
			await check(db)
		} finally {
			db.close()
		}
		putInPlace(part, file)
	} catch (error) {
		rmSync(part, { force: true })
		throw error
	}
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
	const file = backupFileName(at, reason)
	const part = join(folder, `${file}.part`)
	rmSync(part, { force: true })
	db.prepare('VACUUM INTO ?').run(part)
	chmodSync(part, 0o600)
	openChecked(part).db.close()
	putInPlace(part, join(folder, file))
	return { file, at, reason }
}
/** Removes what the rule no longer keeps, and parts that a crash left behind. */
export function tidy(folder: string): void {
	for (const file of notKept(listBackups(folder))) rmSync(join(folder, file), { force: true })
	for (const file of readdirSync(folder))
		if (partPattern.test(file)) rmSync(join(folder, file), { force: true })
}
