/** Records of which one is damaged on the disk. */
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { Store } from '../../electron/store/store.ts'
import { passphrase, signed, withPlayer } from './bench-app.ts'

/** Flips one bit in the middle of the record's sealed bytes, as a worn disk would. */
function damage(here: string, record: string): void {
	const database = new DatabaseSync(join(here, 'lastwright.db'))
	const { sealed } = database.prepare('SELECT sealed FROM record WHERE id = ?').get(record) as {
		sealed: Uint8Array
	}
	const hurt = Uint8Array.from(sealed)
	const middle = Math.floor(hurt.length / 2)
	hurt[middle] = (hurt[middle] ?? 0) ^ 1
	for (const { name } of database
		.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'")
		.all() as { name: string }[])
		database.exec(`DROP TRIGGER ${name}`)
	database.prepare('UPDATE record SET sealed = ? WHERE id = ?').run(hurt, record)
	database.close()
}
/** The first record about a visit: the visit itself, or the player's report. */
async function recordOf(here: string, kind: string, visitId: string): Promise<string> {
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	const { record } = store.cardsOf(kind, visitId)[0]!
	store.close()
	return record
}
/** A player with two signed visits, of which a record of the first is damaged. */
export async function damagedRecords(kind: 'visit' | 'report') {
	const { app, here, playerId } = await withPlayer()
	const first = await signed(app, playerId, {}, '2027-01-18')
	const second = await signed(app, playerId, {}, '2027-01-20')
	app.close()
	damage(here, await recordOf(here, kind, first))
	return { here, playerId, first, second }
}
