/** Removing records for good, so that not even their freed bytes stay. */
import type { Database } from './database.ts'
import type { Parts } from './parts.ts'
import type { Settings } from './settings.ts'

type Needs = Pick<Parts, 'database' | 'settings' | 'records' | 'drafts' | 'keeper'>
const purgeNote = 'purge'

/**
 * Removes records and keeps what `register` writes, in one transaction; then the freed bytes are
 * overwritten. The trigger that forbids deletion is lifted inside the transaction only.
 */
export function destroyForGood(
	{ database, settings, records, drafts, keeper }: Needs,
	recordIds: readonly string[],
	draftIds: readonly string[],
	register: () => void,
): void {
	database.together(() => {
		keeper.noteMove()
		database.exec('DROP TRIGGER record_kept')
		for (const id of recordIds) records.drop(id)
		for (const id of draftIds) drafts.drop(id)
		database.exec(
			"CREATE TRIGGER record_kept BEFORE DELETE ON record BEGIN SELECT RAISE(ABORT, 'a record " +
				"is never deleted'); END",
		)
		settings.put(purgeNote, '1')
		register()
	})
	purge(database, settings)
}
/** Ends a destruction whose last step a crash cut off. */
export function finishDestruction(database: Database, settings: Settings): void {
	if (settings.text(purgeNote) !== undefined) purge(database, settings)
}
function purge(database: Database, settings: Settings): void {
	database.forgetStatements()
	database.exec('VACUUM')
	emptyLog(database)
	settings.drop(purgeNote)
	emptyLog(database)
}
/** Brings the write-ahead log into the file and cuts it to nothing. */
export function emptyLog(database: Database): void {
	database.prepare('PRAGMA wal_checkpoint(TRUNCATE)').get()
}
