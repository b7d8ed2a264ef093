/** Which step of the schema a file stands at, and bringing it up to this version's. */
import type { DatabaseSync } from 'node:sqlite'
import { migrations } from './migrations.table.ts'
import { Said } from './said.ts'

type Executing = Pick<DatabaseSync, 'exec' | 'prepare' | 'isTransaction'>

/** The number of steps a file has behind it; 0 where it holds no records. */
export function schemaOf(db: Pick<DatabaseSync, 'prepare'>): number {
	const row = db.prepare("SELECT value FROM meta WHERE name = 'schema'").get() as
		| { value: number }
		| undefined
	return Number(row?.value ?? 0)
}
/** Whether a file is a store of an earlier version. */
export function isOlder(db: Pick<DatabaseSync, 'prepare'>): boolean {
	const found = schemaOf(db)
	return found > 0 && found < migrations.length
}
/** Takes the steps that a file lacks, each whole. @throws Error on a file of a newer version */
export function migrate(db: Executing): void {
	const found = schemaOf(db)
	if (found > migrations.length)
		throw new Said(
			`These records were written by a newer Lastwright (schema ${found}; this one knows up to ` +
				`${migrations.length}). Install the newer version to open them.`,
		)
	for (const [index, step] of migrations.entries())
		if (index >= found) takeStep(db, step, index + 1)
}
function takeStep(db: Executing, step: string, number: number): void {
	db.exec('BEGIN IMMEDIATE')
	try {
		db.exec(step)
		db.prepare(
			"INSERT INTO meta VALUES ('schema', ?) ON CONFLICT (name) DO UPDATE SET value = " +
				'excluded.value',
		).run(number)
		db.exec('COMMIT')
	} catch (error) {
		if (db.isTransaction) db.exec('ROLLBACK')
		throw error
	}
}
