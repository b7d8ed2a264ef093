/** What a broken file, a full disk or a clock set back does to the records: said, and nothing lost. */
import { execFileSync } from 'node:child_process'
import {
	existsSync,
	mkdirSync,
	readdirSync,
	readFileSync,
	truncateSync,
	writeFileSync,
} from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { backupsIn, folder, open, passphrase, player, withPlayer } from './bench-app.ts'

describe('a fault', () => {
	test.each([
		['cut short', (file: string) => truncateSync(file, 5000)],
		['overwritten', (file: string) => writeFileSync(file, 'gone')],
	])(
		'a records file %s is kept aside, said so, and restored from the newest backup',
		async (_, hurt) => {
			const { app, here, playerId } = await withPlayer()
			const made = await app.ask('backups.make')
			app.close()
			hurt(join(here, 'lastwright.db'))
			const again = open(here)
			const { state, warnings } = await again.ask('session.status')
			expect(state).toBe('needs-setup')
			expect(warnings.join(' ')).toMatch(
				/damaged as a whole.*nothing was deleted.*Restore the newest backup/,
			)
			expect(readdirSync(here).some((name) => name.includes('.damaged-'))).toBe(true)
			await again.ask('session.moveHere', { file: made.file })
			await again.ask('session.unlock', { passphrase })
			expect((await again.ask('players.open', { playerId })).player).toEqual(player)
			again.close()
		},
	)
	test('an emptied records file is not taken for a new clinic', async () => {
		const { app, here } = await withPlayer()
		app.close()
		writeFileSync(join(here, 'lastwright.db'), '')
		const again = open(here)
		expect((await again.ask('session.status')).warnings.join(' ')).toMatch(
			/empty although records were kept/,
		)
		again.close()
	})
	test('a broken settings file is kept aside and said so', async () => {
		for (const text of ['{"backupFolder":', '{"backupFolder":7}', '{"colour":"red"}']) {
			const { app, here } = await withPlayer()
			app.close()
			writeFileSync(join(here, 'settings.json'), text)
			const again = open(here)
			expect((await again.ask('session.status')).warnings.join(' ')).toMatch(
				/settings file could not be read/,
			)
			const aside = readdirSync(here).find((name) => name.includes('.broken-')) ?? ''
			expect(readFileSync(join(here, aside), 'utf8')).toBe(text)
			await again.ask('session.unlock', { passphrase })
			again.close()
		}
	})
	test('a clock set back is pointed out and the order stays', async () => {
		const { app, here, playerId } = await withPlayer()
		app.close()
		const back = open(here, '2025-01-01T09:00:00.000Z')
		await back.ask('session.unlock', { passphrase })
		expect((await back.ask('session.status')).warnings.join(' ')).toMatch(
			/clock shows 2025-01-01 09:00/,
		)
		await back.ask('players.save', { playerId, player: { ...player, club: 'Invented United' } })
		back.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect((await again.ask('players.open', { playerId })).player.club).toBe('Invented United')
		again.close()
	})
	test('a store open twice is refused in words', async () => {
		const { app, here } = await withPlayer()
		expect(() => open(here)).toThrow(/already open in another Lastwright/)
		app.close()
	})

	const mounted = (() => {
		if (process.platform !== 'linux' || process.getuid?.() !== 0) return undefined
		const where = folder()
		try {
			execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=1m', 'tmpfs', where], { stdio: 'ignore' })
			return where
		} catch {
			return undefined
		}
	})()
	test.skipIf(!mounted)(
		'a full and a read-only disk are named, nothing acknowledged is lost, reading goes on ' +
			'(needs root and a mount: skipped elsewhere)',
		async () => {
			const disk = mounted ?? ''
			const here = join(disk, 'data')
			mkdirSync(here)
			try {
				const { app, playerId } = await withPlayer(here)
				let saved = 0
				let refusedWith = ''
				for (let number = 1; number < 400 && !refusedWith; number++) {
					const answer = await app.call('players.save', {
						playerId,
						player: { ...player, club: `Club ${number} ${'x'.repeat(100)}`.slice(0, 60) },
					})
					if (answer.ok) saved = number
					else refusedWith = answer.code
					if (number === 3) writeFileSync(join(disk, 'filler'), Buffer.alloc(420_000))
				}
				expect(refusedWith).toBe('records.disk-full')
				const club = (await app.ask('players.open', { playerId })).player.club
				expect(club).toContain(`Club ${saved} `)
				let warnings = ''
				for (let read = 0; read < 300 && !warnings; read++) {
					expect((await app.ask('players.open', { playerId })).player.club).toBe(club)
					warnings = (await app.ask('session.status')).warnings.join(' ')
				}
				expect(warnings).toMatch(/full or not writable/)
				expect((await app.refused('backups.make', {})).code).toBe('places.no-room')
				expect(backupsIn(here)).toEqual([])
				execFileSync('rm', [join(disk, 'filler')])
				await app.ask('players.save', { playerId, player: { ...player, club: 'room again' } })
				expect((await app.ask('audit.verify')).problems).toEqual([])
				app.close()
				execFileSync('mount', ['-o', 'remount,ro', disk])
				expect(() => open(here)).toThrow(/cannot be written to/)
				execFileSync('mount', ['-o', 'remount,rw', disk])
				const again = open(here)
				await again.ask('session.unlock', { passphrase })
				expect((await again.ask('players.open', { playerId })).player.club).toBe('room again')
				expect((await again.refused('backups.make', { folder: '/proc/none' })).code).toBe(
					'places.not-writable',
				)
				again.close()
			} finally {
				execFileSync('umount', ['-l', disk])
			}
		},
	)
	test('of the folder being a file is said in words', () => {
		const file = join(folder(), 'a-file')
		writeFileSync(file, '')
		expect(() => open(file)).toThrow()
		expect(existsSync(file)).toBe(true)
	})
})
