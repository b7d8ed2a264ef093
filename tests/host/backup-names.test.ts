/** Backups of several PCs in one folder, and clocks that once stood ahead. */
import { existsSync, readdirSync, renameSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { backupsIn, folder, type Opened, passphrase, withPlayer } from './bench-app.ts'

const dayMs = 86_400_000
/** Time goes by while the records are locked. */
const unlockAt = async (app: Opened, ms: number) => {
	await app.ask('session.lock')
	app.clock.ms = ms
	await app.ask('session.unlock', { passphrase })
}

test('two PCs with one folder for their backups leave each other alone', async () => {
	const stick = folder()
	const here = await withPlayer()
	const there = await withPlayer()
	for (const { app } of [here, there]) await app.ask('backups.setFolder', { folder: stick })
	const first = backupsIn(stick)
	expect(first).toHaveLength(2)
	// far more than the rule keeps of one PC
	for (let number = 0; number < 12; number++) {
		await unlockAt(here.app, here.app.clock.ms + dayMs)
		await here.app.ask('backups.make')
	}
	const ofThere = readdirSync(stick).filter((file) => first.includes(file))
	expect(ofThere).toHaveLength(1)
	const shown = (await there.app.ask('backups.list')).backups
	expect(shown.filter((backup: { madeBy: string }) => backup.madeBy === 'this-pc')).toEqual([
		expect.objectContaining({ file: ofThere[0] }),
	])
	expect(
		shown.filter((backup: { madeBy: string }) => backup.madeBy === 'other').length,
	).toBeGreaterThan(4)
	for (const { app } of [here, there]) app.close()
})
test('a clock that once stood ahead costs no backup, and the daily one goes on', async () => {
	const { app, here } = await withPlayer()
	const now = app.clock.ms
	await unlockAt(app, Date.parse('2031-01-01T09:00:00.000Z'))
	const ahead = await app.ask('backups.make')
	await unlockAt(app, now)
	for (let number = 0; number < 8; number++) {
		app.clock.ms += 1000
		const made = await app.ask('backups.make')
		expect(made.bytes).toBeGreaterThan(0)
		expect(existsSync(join(made.folder, made.file))).toBe(true)
	}
	expect(backupsIn(here)).toContain(ahead.file)
	app.close()
})
test('a backup whose name says nothing of its PC is listed, restored and never tidied away', async () => {
	const { app, here } = await withPlayer()
	const made = await app.ask('backups.make')
	const old = 'lastwright-backup-2026-11-25T14-05-00-000Z-asked.db'
	renameSync(join(here, made.file), join(here, old))
	const part = 'lastwright-backup-2026-11-25T14-05-00-000Z-ffffffffffff-daily.db.part'
	writeFileSync(join(here, part), 'another PC is writing this')
	for (let number = 0; number < 7; number++) {
		app.clock.ms += 1000
		await app.ask('backups.make')
	}
	expect(readdirSync(here)).toEqual(expect.arrayContaining([old, part]))
	await app.ask('backups.restore', { file: old })
	await app.ask('session.unlock', { passphrase })
	app.close()
})
