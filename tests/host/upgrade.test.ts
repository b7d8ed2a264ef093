/** Records of an earlier version are copied, brought up to date and whole. */
import { copyFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, test } from 'vitest'
import { fixtures, readManifest } from '../compatibility/manifest.ts'
import { backupsIn, folder, open, passphrase } from './bench-app.ts'

const oldStore = join(fixtures, 'before-0.1.0/home/lastwright.db')

describe('the store of the first schema', () => {
	const { recoveryKey } = readManifest('before-0.1.0').openings[0]!
	const upgraded = () => {
		const here = folder()
		copyFileSync(oldStore, join(here, 'lastwright.db'))
		return here
	}
	test.each(['passphrase', 'recovery key'])(
		'is copied, brought up to date and opened with the %s; nothing is lost',
		async (by) => {
			const here = upgraded()
			const app = open(here)
			expect(backupsIn(here)).toEqual([expect.stringContaining('before-upgrade')])
			expect((await app.ask('session.status')).warnings).toEqual([
				expect.stringMatching(/brought up to this version/),
			])
			if (by === 'passphrase') await app.ask('session.unlock', { passphrase })
			else
				await app.ask('session.unlockWithRecoveryKey', {
					recoveryKey,
					newPassphrase: 'other words',
				})
			const { cards } = await app.ask('players.search', { query: '', limit: 10 })
			expect(
				cards.map((card: { familyName: string; lastVisit?: string; openDraft: boolean }) => [
					card.familyName,
					card.lastVisit,
					card.openDraft,
				]),
			).toEqual([
				['Ashdown', '2026-11-20', true],
				['Quill', undefined, false],
			])
			const { visits } = await app.ask('players.open', { playerId: cards[0].playerId })
			expect((await app.ask('visits.open', { visitId: visits[0].visitId })).visit.notes).toBe(
				'first',
			)
			expect(
				Buffer.from(
					(await app.ask('reports.open', { visitId: visits[0].visitId })).base64,
					'base64',
				).toString(),
			).toContain('%PDF')
			expect(
				(await app.ask('drafts.open', { playerId: cards[0].playerId, visitDate: '2026-11-21' }))
					.draft.content.visit.visitDate,
			).toBe('2026-11-21')
			expect((await app.ask('people.list')).people).toEqual([
				expect.objectContaining({ name: 'A. Example', role: 'owner' }),
			])
			expect((await app.ask('audit.verify')).problems).toEqual([])
			app.close()
			const db = new DatabaseSync(join(here, 'lastwright.db'))
			db.exec(
				"DROP TRIGGER record_stays; UPDATE record SET at = '2020-01-01T00:00:00.000Z' WHERE " +
					"kind = 'visit'",
			)
			db.close()
			const again = open(here)
			await again.ask('session.unlock', {
				passphrase: by === 'passphrase' ? passphrase : 'other words',
			})
			expect((await again.ask('audit.verify')).problems).toEqual([
				expect.stringMatching(/written by an earlier version, was altered/),
			])
			again.close()
		},
	)
	test('is restored as a backup from the list too', async () => {
		const there = open(folder())
		await there.ask('session.moveHere', { file: oldStore })
		await there.ask('session.unlock', { passphrase })
		expect((await there.ask('players.search', { query: 'ines', limit: 5 })).total).toBe(1)
		there.close()
	})
})
