/** A backup in the place of the records. */
import { chmodSync, copyFileSync, rmSync } from 'node:fs'
import { DatabaseSync } from 'node:sqlite'
import type { z } from 'zod'
import type { BackupName } from '../../shared/desk/records/backup-name.ts'
import { present } from '../../shared/engine/plain/present.ts'
import { type restoredSchema, restoredSetting } from './at-unlock.ts'
import { BackupRefused, openChecked } from './backup-file.ts'
import type { DataKeys } from './data-keys.ts'
import { emptyLog } from './destruction.ts'
import { shut } from './envelope.ts'
import { putInPlace } from './files.ts'
import { type Opening, openFile } from './opening.ts'
import { lockUp } from './parts.ts'
import { migrate } from './schema.ts'

/**
 * Puts a backup in the place of the records.
 * @param backUp backs up what stands now, so that it is never lost; asked only where there is any
 * @throws BackupRefused where the backup is not whole, or belongs to other records
 */
export async function restoreFrom(
	opening: Opening,
	file: string,
	backUp: () => Promise<BackupName>,
): Promise<{ before?: BackupName }> {
	const { parts, files, notices } = opening
	const { slots, backups, database, trail, keyring } = parts
	const lastAt = mustBeSetUp(file)
	if (slots.isSetUp && backups.preview(file).sameClinic === false)
		throw new BackupRefused(
			'This backup belongs to other records: the key of this clinic does not open it. Choose ' +
				'one of this clinic.',
		)
	const mark = restoredMark(keyring.keys, `backup of ${lastAt ?? 'unknown time'}`)
	const copy = readyCopy(file, mark, files.records)
	const before = slots.isSetUp ? await backUp() : undefined
	lockUp(parts)
	emptyLog(database)
	database.close()
	try {
		// an empty log of the old file must not be read into the new one
		for (const end of ['-wal', '-shm']) rmSync(files.records + end, { force: true })
		putInPlace(copy, files.records)
	} finally {
		trail.dropWaiting()
		notices.length = 0
		openFile(opening)
	}
	return present({ before })
}
/** @returns the time of the last record in a backup; undefined where it holds none */
function mustBeSetUp(file: string): string | undefined {
	const { db, setUp, lastAt } = openChecked(file)
	db.close()
	if (!setUp)
		throw new BackupRefused(
			'This backup holds no records: it was made before the clinic was set up. Choose another ' +
				'one.',
		)
	return lastAt
}
/** What tells the next unlock that the file was put back: sealed where the key was open. */
function restoredMark(keys: DataKeys | undefined, of: string): Uint8Array {
	if (!keys) return Buffer.from(of, 'utf8')
	const clear = Buffer.from(JSON.stringify({ of } satisfies z.infer<typeof restoredSchema>), 'utf8')
	return shut(keys.newest, clear, ['setting', restoredSetting])
}
/** A copy beside the records, brought up to this version and checked whole. @returns its file */
function readyCopy(file: string, mark: Uint8Array, records: string): string {
	const copy = `${records}.restoring`
	for (const end of ['', '-wal', '-shm', '-journal']) rmSync(copy + end, { force: true })
	copyFileSync(file, copy)
	chmodSync(copy, 0o600)
	const db = new DatabaseSync(copy)
	try {
		migrate(db)
		db.prepare(
			"INSERT INTO setting VALUES ('restored', ?) ON CONFLICT (name) DO UPDATE SET value = " +
				'excluded.value',
		).run(mark)
		// the copy counts wrong tries anew
		db.exec("DELETE FROM setting WHERE name = 'tries'; PRAGMA journal_mode=DELETE")
	} finally {
		db.close()
	}
	openChecked(copy).db.close()
	return copy
}
