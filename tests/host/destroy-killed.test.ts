/** A destruction that is killed is done or not begun, and no false alarm follows. */
import { cpSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { folder, open, passphrase, signed, withPlayer } from './bench-app.ts'
import { runUntilKilled } from './killed.ts'

const script = fileURLToPath(new URL('./fixtures/destroy-player.ts', import.meta.url))
const name = 'Zoë Marlowe-Nguyễn'
const rounds = 5

test('killed at any moment it is before or after, and the trail is whole', {
	timeout: 120_000,
}, async () => {
	const { app, here, playerId } = await withPlayer()
	for (const visitDate of ['2027-01-18', '2027-01-19', '2027-01-20'])
		await signed(app, playerId, {}, visitDate)
	await app.ask('backups.make')
	app.close()
	for (let round = 0; round < rounds; round++) {
		const there = folder()
		cpSync(here, there, { recursive: true })
		const where = `round ${round}`
		const { lines } = await runUntilKilled(script, [there, playerId, name], round * 12)
		const again = open(there, '2036-04-18T10:00:00.000Z')
		await again.ask('session.unlock', { passphrase })
		const { cards } = await again.ask('players.search', { query: '', limit: 5 })
		const { lines: register } = await again.ask('retention.register')
		expect(register.length, where).toBe(cards.length === 0 ? 1 : 0)
		if (lines.includes('destroyed')) expect(cards, where).toEqual([])
		expect((await again.ask('audit.verify')).problems, where).toEqual([])
		if (cards.length > 0)
			expect((await again.ask('players.open', { playerId })).visits, where).toHaveLength(3)
		again.close()
	}
})
