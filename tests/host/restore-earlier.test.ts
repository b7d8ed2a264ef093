/** Backups of the first version are looked into and restored; a replaced file is not put back unseen. */
import { copyFileSync, cpSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { filesIn, outsideFolder } from '../../electron/store/folder.ts'
import { Store } from '../../electron/store/store.ts'
import { fixtures } from '../compatibility/manifest.ts'
import { backupsIn, folder, open, passphrase, withPlayer } from './bench-app.ts'
import { later, leaveAll, listAfter, restored, staff, theirs } from './restore-bench.ts'

test('the copy from before the upgrade names its players, and is restored with people and keys of now', async () => {
	const here = folder()
	copyFileSync(join(fixtures, 'before-0.1.0/home/lastwright.db'), join(here, 'lastwright.db'))
	const app = open(here)
	await app.ask('session.unlock', { passphrase })
	const [file = ''] = backupsIn(here)
	const { cards } = await app.ask('players.search', { query: '', limit: 10 })
	const { personId } = await app.ask('people.save', { ...staff, passphrase: theirs })
	await app.ask('players.save', {
		player: { givenName: 'Bo', familyName: 'Later', birthDate: '1999-07-01', sex: 'male' },
	})
	expect(await app.ask('backups.preview', { file })).toMatchObject({
		...{ sameClinic: true, players: cards.length, visits: 1 },
		...{ onlyNow: ['Bo Later'], onlyThen: [], damaged: [] },
	})
	later(app)
	await restored(app, file)
	const after = await app.ask('players.search', { query: '', limit: 10 })
	expect(after.cards.map((card: { familyName: string }) => card.familyName)).toEqual(
		cards.map((card: { familyName: string }) => card.familyName),
	)
	const { visits } = await app.ask('players.open', { playerId: cards[0].playerId })
	expect((await app.ask('visits.open', { visitId: visits[0].visitId })).visit.notes).toBe('first')
	expect(
		(await app.ask('people.list')).people.find(
			(one: { personId: string }) => one.personId === personId,
		),
	).toMatchObject({ active: true })
	expect((await app.ask('audit.verify')).problems).toEqual([])
	later(app)
	expect((await app.ask('backups.make')).says).toEqual([])
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: theirs })
	app.close()
})
test('a backup of version 0.1.0 names its players, and is restored into the same records of now', async () => {
	const here = folder()
	cpSync(join(fixtures, '0.1.0/home'), here, { recursive: true })
	const app = open(here, '2027-01-21T10:00:00.000Z')
	const secret = 'lantern over nine quarries'
	await app.ask('session.unlock', { passphrase: secret })
	const { cards } = await app.ask('players.search', { query: '', limit: 50 })
	await app.ask('players.save', {
		player: { givenName: 'Bo', familyName: 'Later', birthDate: '1999-07-01', sex: 'male' },
	})
	const file = join(fixtures, '0.1.0/backup.db')
	const preview = await app.ask('backups.preview', { file })
	expect(preview).toMatchObject({ sameClinic: true, onlyThen: [], damaged: [] })
	expect(preview.players).toBeGreaterThan(0)
	expect(preview.onlyNow).toContain('Bo Later')
	later(app)
	await restored(app, file, secret)
	const after = await app.ask('players.search', { query: '', limit: 50 })
	expect(after.cards.length).toBeLessThanOrEqual(cards.length)
	if ((await listAfter(app))?.open) await leaveAll(app)
	expect((await app.ask('audit.verify')).problems).toEqual([])
	later(app)
	expect((await app.ask('backups.make')).says).toEqual([])
	app.close()
})
test('a file that was kept from right after a restore is found out when it is put back later', async () => {
	const { app, here, playerId } = await withPlayer()
	const { file } = await app.ask('backups.make')
	later(app)
	await app.ask('backups.restore', { file })
	app.close()
	// whoever can read the files, without a key, keeps the file that says it was restored
	const kept = readFileSync(join(here, 'lastwright.db'))
	const again = open(here, '2027-01-20T10:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	await again.ask('consents.record', {
		playerId,
		consent: {
			...{ purpose: 'photos', recipient: '', decision: 'deny', method: 'written' },
			...{ grantor: { name: 'Rae', relation: 'parent' }, given: '2027-01-20' },
		},
	})
	again.close()
	writeFileSync(join(here, 'lastwright.db'), kept)
	const replayed = open(here, '2027-01-20T11:00:00.000Z')
	await replayed.ask('session.unlock', { passphrase })
	const { warnings } = await replayed.ask('session.status')
	expect(warnings.join('\n')).toMatch(/older than it should be/)
	expect((await replayed.ask('audit.verify')).problems.join('\n')).toMatch(
		/older than it should be/,
	)
	replayed.close()
})
/** What a kill leaves between the first commit after a restore and the heads that say it. */
function withoutNewestHead(file: string): void {
	const text = readFileSync(file, 'utf8')
	const places = [text.slice(0, text.length / 2), text.slice(text.length / 2)]
	const numbers = places.map((place) => (JSON.parse(place) as { number: number }).number)
	const newest = Math.max(...numbers)
	const kept = places.map((place, at) =>
		numbers[at] === newest ? ' '.repeat(place.length) : place,
	)
	writeFileSync(file, kept.join(''))
}
test('killed before the heads of a restore are written, nothing is said to be gone', async () => {
	const { app, here } = await withPlayer()
	const { file } = await app.ask('backups.make')
	await app.ask('players.save', {
		player: { givenName: 'Bo', familyName: 'Later', birthDate: '1999-07-01', sex: 'male' },
	})
	later(app)
	await app.ask('backups.restore', { file })
	app.close()
	const store = new Store(here, { cost: 1024 })
	await store.unlock(passphrase)
	store.close()
	const files = filesIn(here, outsideFolder())
	for (const head of [files.head, files.outsideHead]) withoutNewestHead(head)
	const again = open(here, '2027-01-20T11:00:00.000Z')
	await again.ask('session.unlock', { passphrase })
	expect((await again.ask('session.status')).warnings).toEqual([])
	expect((await again.ask('audit.verify')).problems).toEqual([])
	expect((await again.ask('audit.alarms')).alarms).toEqual([])
	again.close()
})
