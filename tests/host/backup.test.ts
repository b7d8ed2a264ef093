/** Backups: made, shown, restored, moved to a new PC, refused. */
import { copyFileSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, test } from 'vitest'
import {
	backupsIn,
	clinic,
	folder,
	open,
	passphrase,
	player,
	signed,
	withPlayer,
} from './bench-app.ts'

const secrets = ['Marlowe', 'Zoë', '2011-04-17', 'Invented', passphrase].map((text) =>
	Buffer.from(text),
)

describe('a backup', () => {
	test('goes to any folder, is restored by list after a preview, and what stood before is kept', async () => {
		const { app, here, playerId } = await withPlayer()
		const visitId = await signed(app, playerId)
		const stick = folder()
		await app.ask('backups.setFolder', { folder: stick })
		app.clock.ms += 1000
		const made = await app.ask('backups.make')
		expect(readdirSync(stick)).toContain(made.file)
		for (const name of readdirSync(stick))
			for (const secret of secrets)
				expect(readFileSync(join(stick, name)).includes(secret), name).toBe(false)
		const later = (
			await app.ask('players.save', {
				player: { ...player, givenName: 'Bo', familyName: 'Quill', birthDate: '1999-07-01' },
			})
		).playerId
		expect(await app.ask('backups.preview', { file: made.file })).toMatchObject({
			visits: 1,
			sameClinic: true,
			players: 1,
			onlyNow: ['Bo Quill'],
			onlyThen: [],
		})
		app.clock.ms += 1000
		const { before } = await app.ask('backups.restore', { file: made.file })
		expect(before).toMatch(/before-restore/)
		expect((await app.ask('session.status')).state).toBe('locked')
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('session.status')).warnings).toEqual([])
		expect((await app.ask('visits.open', { visitId })).visitId).toBe(visitId)
		expect((await app.refused('players.open', { playerId: later })).code).toBe('players.unknown')
		expect((await app.ask('audit.verify')).problems).toEqual([])
		expect((await app.ask('audit.page', { limit: 20, function: 'restore' })).rows).toHaveLength(1)
		await app.ask('backups.restore', { file: before })
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('players.open', { playerId: later })).player.familyName).toBe('Quill')
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect((await again.ask('backups.list')).folder).toBe(stick)
		again.close()
	})
	test('is made once a day after unlocking, its age is shown and nagged about', async () => {
		const { app, here } = await withPlayer()
		expect((await app.ask('backups.list')).nag).toMatch(/no backup yet/)
		for (const days of [0, 0, 1]) {
			await app.ask('session.lock')
			app.clock.ms += days * 86_400_000 + 1000
			await app.ask('session.unlock', { passphrase })
			await expect.poll(() => backupsIn(here).length).toBeGreaterThan(days ? 1 : 0)
		}
		expect(backupsIn(here).map((name) => name.slice(-8)).length).toBe(2)
		expect(await app.ask('backups.list')).toMatchObject({ ageDays: 0, nag: '' })
		app.close()
		const later = open(here, '2027-02-10T09:00:00.000Z')
		await later.ask('session.unlock', { passphrase })
		expect((await later.ask('backups.list')).nag).toBe(
			'The newest backup is 19 days old. Make one now.',
		)
		later.close()
	})
	test('moves to a new PC, and opens there with the passphrase and with the recovery key', async () => {
		const { app, recoveryKey, playerId } = await withPlayer()
		const made = await app.ask('backups.make')
		app.close()
		const there = open(folder())
		expect(
			await there.ask('session.moveHere', { file: join(made.folder, made.file) }),
		).toMatchObject({ visits: 0 })
		expect(
			(await there.refused('session.moveHere', { file: join(made.folder, made.file) })).code,
		).toBe('backups.records-here-already')
		await there.ask('session.unlockWithRecoveryKey', {
			recoveryKey,
			newPassphrase: 'new words here',
		})
		expect((await there.ask('players.open', { playerId })).player).toEqual(player)
		await there.ask('session.lock')
		expect((await there.refused('session.unlock', { passphrase })).code).toBe(
			'people.wrong-passphrase',
		)
		await there.ask('session.unlock', { passphrase: 'new words here' })
		expect((await there.ask('audit.verify')).problems).toEqual([])
		there.close()
	})
	test(
		'that is cut short, bent, foreign or of another clinic is refused in words, and the ' +
			'records stand',
		async () => {
			const { app, playerId } = await withPlayer()
			await signed(app, playerId)
			const made = await app.ask('backups.make')
			const whole = join(made.folder, made.file)
			const scratch = folder()
			const make = (name: string, change: (file: string) => void) => {
				const file = join(scratch, name)
				copyFileSync(whole, file)
				change(file)
				return file
			}
			const foreign = await withPlayer()
			const theirs = await foreign.app.ask('backups.make')
			foreign.app.close()
			const other = join(scratch, 'other.db')
			new DatabaseSync(other).exec('CREATE TABLE a (b)')
			const bad: [string, string][] = [
				[
					make('cut.db', (file) => truncateSync(file, Math.floor(readFileSync(file).length / 2))),
					'backups.unreadable-file',
				],
				[
					make('bent.db', (file) => {
						const bytes = readFileSync(file)
						bytes.fill(255, 4096, 9000)
						writeFileSync(file, bytes)
					}),
					'backups.unreadable-file',
				],
				[make('text.db', (file) => writeFileSync(file, 'not a store')), 'backups.unreadable-file'],
				[other, 'backups.unreadable-file'],
				[join(theirs.folder, theirs.file), 'backups.other-records'],
				[join(scratch, 'none.db'), 'places.no-file'],
				[scratch, 'backups.not-a-file'],
			]
			for (const [file, code] of bad)
				expect((await app.refused('backups.restore', { file })).code, file).toBe(code)
			expect((await app.ask('players.open', { playerId })).visits).toHaveLength(1)
			expect((await app.ask('audit.verify')).problems).toEqual([])
			app.close()
		},
	)
})
test('the letterhead of the owner follows the clinic', async () => {
	const { app } = await withPlayer()
	await app.ask('clinic.save', { ...clinic, clinician: { name: 'B. Renamed', registration: 'X9' } })
	expect((await app.ask('people.list')).people[0]).toMatchObject({
		name: 'B. Renamed',
		registration: 'X9',
	})
	app.close()
})
