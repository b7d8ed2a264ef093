/** What is damaged is named before a backup becomes the newest, and before one is restored. */
import { copyFileSync, rmSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { expect, test } from 'vitest'
import { backupsIn, folder, open, passphrase, signed, withPlayer } from './bench-app.ts'
import { later, restored } from './restore-bench.ts'

/** One flipped bit in the sealed bytes of a record, or in its short form. */
function flip(file: string, table: 'record' | 'roll', kind: string): string {
	const db = new DatabaseSync(file)
	const column = table === 'record' ? 'sealed' : 'card'
	const row = db
		.prepare(`SELECT id, ${column} AS bytes FROM ${table} WHERE kind = ? ORDER BY seq DESC`)
		.get(kind) as { id: string; bytes: Uint8Array }
	const bytes = Buffer.from(row.bytes)
	bytes.writeUInt8((bytes.at(-20) ?? 0) ^ 1, bytes.length - 20)
	db.exec('DROP TRIGGER IF EXISTS record_stays')
	db.prepare(`UPDATE ${table} SET ${column} = ? WHERE id = ?`).run(bytes, row.id)
	db.exec(
		"CREATE TRIGGER IF NOT EXISTS record_stays BEFORE UPDATE ON record BEGIN SELECT RAISE(ABORT, 'a " +
			"record is never changed'); END",
	)
	db.close()
	return row.id
}
/** A signed visit, a good backup of it, and then the damage in the records file. */
async function damaged() {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId)
	const good = await app.ask('backups.make')
	app.close()
	const id = flip(join(here, 'lastwright.db'), 'record', 'visit')
	const again = open(here, '2027-01-20T10:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	return { app: again, here, playerId, good, id }
}
test('a damaged record is named with the older backup that still has it, and nothing is tidied away', async () => {
	const { app, here, good, id } = await damaged()
	for (let number = 0; number < 7; number++) {
		later(app)
		const made = await app.ask('backups.make')
		expect(made).toMatchObject({ damaged: true, file: expect.stringMatching(/-damaged\.db$/) })
		expect(made.says).toEqual([
			`Record ${id} (signed visit of 20 January 2027) is damaged and cannot be read here; an older ` +
				`backup still has it whole: ${good.file}.`,
		])
	}
	expect(backupsIn(here)).toContain(good.file)
	expect(backupsIn(here).length).toBeGreaterThanOrEqual(8)
	const listed = await app.ask('backups.list')
	expect(listed.nag).toMatch(/damaged already when the newest backup was made/)
	expect(listed.backups.at(-1)).toMatchObject({ file: good.file, madeBy: 'this-pc' })
	expect(listed.backups.at(-1).damaged).toBeUndefined()
	// the good one brings it back
	await restored(app, good.file)
	later(app)
	expect((await app.ask('backups.make')).says).toEqual([])
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
test('where no older backup has it whole that is said', async () => {
	const { app, here, good, id } = await damaged()
	rmSync(join(here, good.file))
	for (const file of backupsIn(here)) rmSync(join(here, file))
	later(app)
	expect((await app.ask('backups.make')).says).toEqual([
		expect.stringMatching(new RegExp(`${id} .*No older backup of this PC has it whole`)),
	])
	app.close()
})
test('a backup with one altered record is refused by name until that was read', async () => {
	const { app, here, playerId } = await withPlayer()
	const visitId = await signed(app, playerId)
	const { file } = await app.ask('backups.make')
	const bent = join(folder(), file)
	copyFileSync(join(here, file), bent)
	const id = flip(bent, 'record', 'visit')
	const preview = await app.ask('backups.preview', { file: bent })
	expect(preview.damaged).toEqual([
		`Record ${id} (signed visit of 20 January 2027) is damaged and cannot be read in this backup.`,
	])
	later(app)
	const before = backupsIn(here)
	const refusal = await app.refused('backups.restore', { file: bent })
	expect(refusal.code).toBe('backups.damage-not-read')
	expect(backupsIn(here)).toEqual(before)
	expect((await app.ask('visits.open', { visitId })).visitId).toBe(visitId)
	await app.ask('backups.restore', { file: bent, damageRead: true })
	await app.ask('session.unlock', { passphrase })
	expect((await app.refused('visits.open', { visitId })).code).toBe('visits.unreadable')
	app.close()
})
test('a row that the copy lost on the way is missed', async () => {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	// while the records are open a row goes, as in a page that the disk lost
	const db = new DatabaseSync(join(here, 'lastwright.db'))
	db.exec('DROP TRIGGER record_kept')
	const { id } = db.prepare("SELECT id FROM record WHERE kind = 'visit'").get() as { id: string }
	for (const table of ['record', 'roll']) db.prepare(`DELETE FROM ${table} WHERE id = ?`).run(id)
	db.close()
	later(app)
	const made = await app.ask('backups.make')
	expect(made.damaged).toBe(true)
	expect(made.says).toEqual([
		expect.stringMatching(new RegExp(`Record ${id} \\(signed visit.* is gone here`)),
	])
	app.close()
})
test('a damaged short form is named too', async () => {
	const { app, here, playerId } = await withPlayer()
	await signed(app, playerId)
	const id = flip(join(here, 'lastwright.db'), 'roll', 'visit')
	later(app)
	expect((await app.ask('backups.make')).says).toEqual([
		expect.stringMatching(new RegExp(`${id} .* has a damaged short form here`)),
	])
	app.close()
})
