/** Who was destroyed by law stays destroyed, whatever older backup is put back, and wherever. */
import { copyFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import {
	backupsIn,
	folder,
	type Opened,
	open,
	passphrase,
	player,
	signed,
	withPlayer,
} from './bench-app.ts'
import { later, leaveAll, linesOf, restored } from './restore-bench.ts'

const name = 'Zoë Marlowe-Nguyễn'
const due = Date.parse('2036-04-18T09:00:00Z')
/** Two players with a visit each, a backup of both, and the first of them due to be destroyed. */
async function twoPlayers() {
	const { app, here, playerId } = await withPlayer()
	const visitId = await signed(app, playerId)
	await app.ask('drafts.open', { playerId, visitDate: '2027-01-21' })
	const other = (
		await app.ask('players.save', {
			player: { ...player, givenName: 'Bo', familyName: 'Quill', birthDate: '2010-01-01' },
		})
	).playerId as string
	await signed(app, other)
	const { file } = await app.ask('backups.make')
	await app.ask('session.lock')
	app.clock.ms = due
	await app.ask('session.unlock', { passphrase })
	return { app, here, playerId, visitId, other, file }
}
const destroy = (app: Opened, playerId: string, alsoBackups = false) =>
	app.ask('retention.destroy', { playerId, reason: 'kept long enough', name, alsoBackups })
async function mustBeGone(app: Opened, playerId: string, visitId: string): Promise<void> {
	const { cards } = await app.ask('players.search', { query: '', limit: 20 })
	expect(cards.map((card: { familyName: string }) => card.familyName)).toEqual(['Quill'])
	expect((await app.refused('players.open', { playerId })).code).toBe('players.unknown')
	expect((await app.refused('visits.open', { visitId })).code).toBe('visits.unknown')
	expect((await app.ask('audit.verify')).problems).toEqual([])
}

test('a restore of an older backup destroys again, and says so', async () => {
	const { app, playerId, visitId, file } = await twoPlayers()
	const { backupsThatStillHold } = await destroy(app, playerId)
	expect(backupsThatStillHold).toContain(file)
	await restored(app, file)
	await mustBeGone(app, playerId, visitId)
	expect(await linesOf(app, 'destroyed')).toEqual([
		expect.objectContaining({ says: expect.stringMatching(/records of Zoë .* destroyed again/) }),
	])
	expect((await app.ask('retention.register')).lines).toEqual([expect.objectContaining({ name })])
	await leaveAll(app)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	await mustBeGone(app, playerId, visitId)
	app.close()
})
test('the same folder knows of it after its records were lost with the register', async () => {
	const { app, here, playerId, visitId, file } = await twoPlayers()
	await destroy(app, playerId)
	app.close()
	for (const lost of readdirSync(here)) if (lost !== file) rmSync(join(here, lost))
	const again = open(here, '2036-04-18T10:00:00.000Z')
	await again.ask('session.moveHere', { file })
	await again.ask('session.unlock', { passphrase })
	expect((await again.refused('players.open', { playerId })).code).toBe('players.unknown')
	expect((await again.refused('visits.open', { visitId })).code).toBe('visits.unknown')
	// that the file is older than it should be is said; that the destroyed records are gone is not
	const { problems } = await again.ask('audit.verify')
	expect(problems.filter((one: string) => one.startsWith('Record '))).toEqual([])
	expect((await again.ask('retention.register')).lines).toHaveLength(1)
	again.close()
})
test('a new PC knows of it by a later backup beside the older one', async () => {
	const { app, here, playerId, visitId, file } = await twoPlayers()
	await destroy(app, playerId)
	later(app)
	const newer = await app.ask('backups.make')
	app.close()
	const there = folder()
	for (const one of [file, newer.file]) copyFileSync(join(here, one), join(there, one))
	const moved = open(there, '2036-04-18T10:00:00.000Z')
	await moved.ask('session.moveHere', { file })
	await moved.ask('session.unlock', { passphrase })
	await mustBeGone(moved, playerId, visitId)
	moved.close()
})
test('only backups of this PC go; others are named, and so is what was kept aside', async () => {
	const { app, here, playerId, file } = await twoPlayers()
	const theirs = file.replace(/[0-9a-f]{12}-asked/, 'ffffffffffff-asked')
	copyFileSync(join(here, file), join(here, theirs))
	const aside = 'lastwright.db.damaged-2026-01-01T00-00-00-000Z'
	writeFileSync(join(here, aside), 'a file that could not be opened')
	const done = await destroy(app, playerId, true)
	expect(done.backupsThatStillHold).toEqual([theirs])
	expect(done.says).toEqual([
		`Removed too, as they may have held it: ${aside}.`,
		expect.stringMatching(new RegExp(`${theirs} .* made by another PC and may still hold it`)),
	])
	expect(readdirSync(here)).not.toContain(aside)
	expect(backupsIn(here)).toEqual([theirs, expect.stringMatching(/after-destruction\.db$/)])
	app.close()
})
