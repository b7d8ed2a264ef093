/** Single records in a backup, read where it lies: no copy is made, and nothing is written. */
import { join } from 'node:path'
import type { DatabaseSync } from 'node:sqlite'
import { openChecked } from './backup-file.ts'
import type { DataKeys } from './data-keys.ts'
import { openRecord, type RecordRow, type StoredRecord } from './record.ts'

/** What rows of the first two steps of the schema lack. */
const lacking: Omit<RecordRow, 'seq' | 'id' | 'kind' | 'at' | 'follows' | 'sealed'> = {
	form: 1,
	origin: '',
	tick: 0,
	number: 0,
}
/** @returns undefined where the file cannot be read as a backup */
function opened<T>(file: string, use: (db: DatabaseSync) => T): T | undefined {
	try {
		const { db } = openChecked(file)
		try {
			return use(db)
		} finally {
			db.close()
		}
	} catch {
		return undefined
	}
}
function find(
	db: DatabaseSync,
	where: 'id' | 'kind',
	value: string,
	keys: DataKeys,
): StoredRecord[] {
	const rows = db.prepare(`SELECT * FROM record WHERE ${where} = ? ORDER BY seq`).all(value)
	return rows.flatMap((row) => {
		try {
			return [openRecord(keys, { ...lacking, ...(row as unknown as RecordRow) })]
		} catch {
			return []
		}
	})
}
/** Records of some kinds; those that the keys do not open are left out. */
export const recordsIn = (file: string, kinds: readonly string[], keys: DataKeys): StoredRecord[] =>
	opened(file, (db) => kinds.flatMap((kind) => find(db, 'kind', kind, keys))) ?? []

/** Which of some records a backup holds whole. */
export const wholeIn = (
	folder: string,
	file: string,
	ids: readonly string[],
	keys: DataKeys,
): string[] =>
	opened(join(folder, file), (db) => ids.filter((id) => find(db, 'id', id, keys).length > 0)) ?? []
