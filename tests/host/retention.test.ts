/** How long records and backups are kept, and that what is destroyed is gone. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, test } from 'vitest'
import { notKept } from '../../shared/desk/records/keep.ts'
import { keepUntil, retentionRules } from '../../shared/desk/records/retention.ts'
import { passphrase, player, signed, withPlayer } from './bench-app.ts'

describe('retention', () => {
	// the check rows of the practice standard, 1.3
	test.each([
		['2010-03-14', '2035-03-14', '2035-03-14'],
		['1999-07-01', '2033-11-20', '2034-11-20'],
		['2009-11-21', '2034-11-21', '2034-11-21'],
		['2009-11-20', '2034-11-20', '2035-11-20'],
	])('born %s, last entry 2026-11-20: %s and %s', (birthDate, australia, england) => {
		expect([
			keepUntil(birthDate, '2026-11-20', retentionRules['australia-7-25']),
			keepUntil(birthDate, '2026-11-20', retentionRules['england-8-25']),
		]).toEqual([australia, england])
	})
	test('what is due is listed, a hold stops it, destruction leaves a line and removes every byte', async () => {
		const { app, here, playerId } = await withPlayer()
		const visitId = await signed(app, playerId)
		const other = (
			await app.ask('players.save', {
				player: { ...player, givenName: 'Bo', familyName: 'Quill', birthDate: '2010-01-01' },
			})
		).playerId
		const otherVisit = await signed(app, other)
		const backup = await app.ask('backups.make')
		await app.ask('session.lock')
		app.clock.ms = Date.parse('2036-04-18T09:00:00Z')
		await app.ask('session.unlock', { passphrase })
		const { due } = await app.ask('retention.due')
		expect(
			due.map((line: { playerId: string; keepUntil: string }) => [line.playerId, line.keepUntil]),
		).toContainEqual([playerId, '2036-04-17'])
		const input = {
			playerId,
			reason: 'kept long enough',
			name: 'zoe marlowe-nguyen',
			alsoBackups: true,
		}
		expect(
			(await app.refused('retention.destroy', { ...input, name: 'Somebody Else' })).problems?.[0]
				?.path,
		).toBe('name')
		await app.ask('retention.hold', { playerId, reason: 'a claim is open', on: true })
		expect((await app.refused('retention.destroy', input)).code).toBe('backups.on-hold')
		await app.ask('retention.hold', { playerId, reason: 'claim closed', on: false })
		// a hold is no entry of care: it does not start the clock anew
		const reader = new DatabaseSync(join(here, 'lastwright.db'), { readOnly: true })
		const sealed = (
			reader
				.prepare(
					"SELECT sealed FROM record WHERE kind IN ('player', 'visit', 'report') ORDER BY seq",
				)
				.all() as { sealed: Uint8Array }[]
		).map((row) => Buffer.from(row.sealed).subarray(0, 40))
		reader.close()
		const holding = (wanted = sealed) =>
			readdirSync(here)
				.filter((name) => name !== 'lastwright.lock')
				.map((name) => readFileSync(join(here, name)))
				.reduce((count, bytes) => count + wanted.filter((body) => bytes.includes(body)).length, 0)
		const before = holding()
		expect(before).toBeGreaterThanOrEqual(sealed.length * 2)
		const done = await app.ask('retention.destroy', input)
		expect(done.records).toBeGreaterThanOrEqual(3)
		expect(done.backupsThatStillHold).toEqual([])
		expect(readdirSync(here)).not.toContain(backup.file)
		// three of the six sealed records are the other player's: they stand in the store and in the
		// new backup
		const left = readFileSync(join(here, 'lastwright.db'))
		expect(sealed.map((body) => left.includes(body))).toEqual([
			false,
			false,
			false,
			true,
			true,
			true,
		])
		expect(holding(sealed.slice(0, 3))).toBe(0)
		expect(holding(sealed.slice(3))).toBeGreaterThanOrEqual(6)
		expect((await app.refused('visits.open', { visitId })).code).toBe('visits.unknown')
		expect((await app.ask('visits.open', { visitId: otherVisit })).visitId).toBe(otherVisit)
		expect((await app.ask('retention.register')).lines).toEqual([
			expect.objectContaining({
				name: 'Zoë Marlowe-Nguyễn',
				from: '2027-01-20',
				to: '2027-01-20',
				destroyedOn: '2036-04-18',
			}),
		])
		expect((await app.ask('audit.verify')).problems).toEqual([])
		app.close()
		const db = new DatabaseSync(join(here, 'lastwright.db'))
		expect(() => db.exec('DELETE FROM record')).toThrow(/never deleted/)
		db.close()
	})
	test('a record that is still to be kept is not destroyed', async () => {
		const { app, playerId } = await withPlayer()
		expect(
			(
				await app.refused('retention.destroy', {
					playerId,
					reason: 'too early',
					name: 'Zoë Marlowe-Nguyễn',
					alsoBackups: false,
				})
			).code,
		).toBe('backups.to-be-kept')
		app.close()
	})
	test('backups are kept by days, weeks and months, never fewer than one', () => {
		const daily = Array.from({ length: 400 }, (_, back) => {
			const at = new Date(Date.UTC(2027, 5, 30) - back * 86_400_000).toISOString()
			return { file: at, at, reason: 'daily' as const }
		})
		const gone = notKept(daily)
		const kept = daily.filter(({ file }) => !gone.includes(file))
		expect(kept.slice(0, 7)).toEqual(daily.slice(0, 7))
		expect(kept.length).toBeLessThanOrEqual(7 + 4 + 12)
		expect(kept.length).toBeGreaterThanOrEqual(18)
		expect(notKept(daily.slice(0, 1))).toEqual([])
	})
})
