/** Opening the records file: brought up to this version, or kept aside where it is ruined. */
import { existsSync } from 'node:fs'
import { copyAtOnce } from './backup-file.ts'
import { removeCopies } from './beside.ts'
import type { Database } from './database.ts'
import { finishDestruction } from './destruction.ts'
import { isRuined } from './disk.ts'
import { emptiedWords, type StoreFiles, setAside } from './folder.ts'
import { forgetFile } from './forgetting.ts'
import { rollTable } from './migrations.table.ts'
import type { Parts } from './parts.ts'
import { isOlder, migrate } from './schema.ts'

export interface Opening {
	parts: Parts
	files: StoreFiles
	/** ISO 8601 */
	now: () => string
	/** gets what the person should know, in words */
	notices: string[]
}
/** Opens the file in its place. @throws Error where it cannot be used; it is closed again then */
export function openFile({ parts, files, now, notices }: Opening): void {
	const { database, settings } = parts
	database.open(files.records)
	try {
		if (isOlder(database)) {
			const made = copyAtOnce(database, files.folder, now(), 'before-upgrade')
			notices.push(
				`The records were brought up to this version. The copy from before is ${made.file}.`,
			)
		}
		migrate(database)
		fitMissingRoll(database)
		forgetFile(parts)
		finishDestruction(database, settings)
	} catch (error) {
		database.close()
		throw error
	}
}
/** A roll that is gone is fitted empty: at unlock it is made anew from the records, and said. */
function fitMissingRoll(database: Database): void {
	const roll = database.first("SELECT 1 FROM sqlite_master WHERE type = 'table' AND name = 'roll'")
	if (!roll) database.exec(rollTable)
}
/**
 * Opens the file at the start of the program: one that is no store any more is kept aside, and a
 * folder whose records are gone is pointed out.
 * @param backups the backups there are, newest first
 */
export function openAtStart(opening: Opening, backups: () => { file: string }[]): void {
	const { parts, files, now, notices } = opening
	removeCopies(files.records)
	try {
		openFile(opening)
	} catch (error) {
		if (!isRuined(error)) throw error
		notices.push(setAside(files.records, now(), backups))
		openFile(opening)
	}
	const wasUsed = () => existsSync(files.head) || backups().length > 0
	if (!parts.slots.isSetUp && wasUsed() && notices.length === 0)
		notices.push(emptiedWords(files.folder))
}
