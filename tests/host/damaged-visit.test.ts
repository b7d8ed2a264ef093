/** One damaged visit is named, and nothing else stops: the player's draft, pages, other visits. */
import { describe, expect, test } from 'vitest'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { open, passphrase, player, signed } from './bench-app.ts'
import { damagedRecords } from './damage-bench.ts'

/** The same, opened a month later. */
async function withDamage(kind: 'visit' | 'report') {
	const found = await damagedRecords(kind)
	const app = open(found.here, '2027-02-20T09:00:00.000Z')
	await app.ask('session.unlock', { passphrase })
	return { app, ...found }
}

describe('a damaged visit', () => {
	test('is left out of a new draft and named there; the draft is signed all the same', async () => {
		const { app, playerId } = await withDamage('visit')
		const { earlier, lacking } = await app.ask('drafts.open', { playerId, visitDate: '2027-02-20' })
		expect(earlier).toHaveLength(1)
		expect(lacking).toEqual([expect.stringMatching(/visit of 18 January 2027.*restore it from/i)])
		const visitId = await signed(app, playerId, {}, '2027-02-20')
		const { html } = await app.ask('reports.page', { visitId })
		expect(html).toContain(speakFrom()('player.lacking', { count: 1 }))
		app.close()
	})
	test('is refused in words that name it, and stands in the list of the player', async () => {
		const { app, playerId, first, second } = await withDamage('visit')
		const { visits } = await app.ask('players.open', { playerId })
		expect(visits.map(({ visitId }: { visitId: string }) => visitId)).toEqual([second, first])
		const calls: [string, object][] = [
			['visits.open', {}],
			['reports.open', {}],
			['reports.page', {}],
			['visits.amend', { reason: 'to be mended' }],
			['outbox.recipients', {}],
		]
		for (const [name, input] of calls)
			expect((await app.refused(name, { visitId: first, ...input })).code).toBe('visits.unreadable')
		const { versions } = await app.ask('visits.history', { visitId: first })
		expect(versions).toEqual([
			expect.objectContaining({ version: 1, trouble: expect.stringContaining('damaged') }),
		])
		app.close()
	})
	test('leaves the documents of other visits and other players as they were', async () => {
		const { app, playerId, second } = await withDamage('visit')
		expect((await app.ask('reports.open', { visitId: second })).base64).toBeTruthy()
		expect((await app.ask('reports.page', { visitId: second })).html).toContain('<h1>')
		await app.ask('outbox.add', {
			visitId: second,
			kind: 'player',
			recipientId: 'player',
			channel: 'print',
			due: '2027-02-22',
		})
		expect((await app.ask('outbox.list')).items).toHaveLength(1)
		const other = await app.ask('players.save', {
			player: { ...player, givenName: 'Bo', familyName: 'Quill' },
		})
		await signed(app, other.playerId, {}, '2027-02-20')
		expect((await app.ask('players.open', { playerId })).visits).toHaveLength(2)
		app.close()
	})
	test('whose report alone is damaged can be read and amended; the report is named', async () => {
		const { app, playerId, first } = await withDamage('report')
		for (const name of ['reports.open', 'reports.page'])
			expect((await app.refused(name, { visitId: first })).code).toBe('visits.unreadable-pages')
		expect((await app.ask('visits.open', { visitId: first })).visitId).toBe(first)
		await app.ask('visits.amend', { visitId: first, reason: 'to be printed again' })
		await signed(app, playerId, {}, '2027-01-18')
		expect((await app.ask('reports.open', { visitId: first })).base64).toBeTruthy()
		expect((await app.refused('reports.open', { visitId: first, version: 1 })).code).toBe(
			'visits.unreadable-pages',
		)
		app.close()
	})
})
