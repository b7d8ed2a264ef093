/** Details that were typed and not saved: kept sealed for who typed them, gone once saved. */
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { clinic, folder, passphrase, player, signed, withPlayer } from './bench-app.ts'
import { noPage, openNow } from './clock-app.ts'
import { runUntilKilled } from './killed.ts'

const script = fileURLToPath(new URL('./fixtures/keep-typed.ts', import.meta.url))
const typed = { club: 'Kingfisher Albion', 'guardian.phone': '555 0142' }
const others = 'reception words'

test('they are there again after locking, for who typed them and for no other', async () => {
	const { app, playerId } = await withPlayer()
	await app.ask('people.save', {
		name: 'Invented reception',
		registration: '',
		role: 'reception',
		passphrase: others,
	})
	await app.ask('players.keepTyped', { playerId, typed })
	await app.ask('players.keepTyped', { typed: { givenName: 'Not saved yet' } })
	await app.ask('session.lock')
	expect((await app.refused('players.typed', { playerId })).code).toBe('people.locked')
	await app.ask('session.unlock', { passphrase: others })
	expect(await app.ask('players.typed', { playerId })).toEqual({})
	expect(await app.ask('players.typed')).toEqual({})
	await app.ask('players.keepTyped', { playerId, typed: { club: 'Another' } })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	expect(await app.ask('players.typed', { playerId })).toEqual({
		typed,
		at: '2027-01-20T09:00:00.000Z',
	})
	expect((await app.ask('players.typed')).typed).toEqual({ givenName: 'Not saved yet' })
	app.close()
})
test('saving or discarding ends them, of this form alone; a refused save ends nothing', async () => {
	const { app, playerId } = await withPlayer()
	await app.ask('players.keepTyped', { playerId, typed })
	await app.ask('players.keepTyped', { typed: { givenName: 'Bo' } })
	await app.refused('players.save', { playerId, player: { ...player, birthDate: '1850-01-01' } })
	expect((await app.ask('players.typed', { playerId })).typed).toEqual(typed)
	await app.ask('players.save', { playerId, player: { ...player, club: typed.club } })
	expect(await app.ask('players.typed', { playerId })).toEqual({})
	expect((await app.ask('players.typed')).typed).toEqual({ givenName: 'Bo' })
	await app.ask('players.keepTyped', { typed: {} })
	expect(await app.ask('players.typed')).toEqual({})
	expect((await app.refused('players.keepTyped', { playerId: 'nobody', typed })).code).toBe(
		'players.unknown',
	)
	app.close()
})
test('they are no draft of a visit, no record and no row of the audit trail', async () => {
	const { app, here, playerId } = await withPlayer()
	const rows = async () => (await app.ask('audit.verify')).rows
	const before = await rows()
	await app.ask('players.keepTyped', { playerId, typed })
	// looking at the trail is a row of its own
	expect(await rows()).toBe(before + 1)
	expect((await app.ask('players.open', { playerId })).drafts).toEqual([])
	expect((await app.ask('players.search', { query: '', limit: 9 })).cards[0].openDraft).toBe(false)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	expect((await app.ask('session.status')).warnings).toEqual([])
	expect((await app.ask('audit.verify')).problems).toEqual([])
	await signed(app, playerId)
	for (const name of readdirSync(here)) {
		const bytes = readFileSync(join(here, name))
		for (const word of Object.values(typed)) expect(bytes.includes(word), name).toBe(false)
	}
	app.close()
})
test('they go with the player whose records are destroyed', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId)
	await app.ask('players.keepTyped', { playerId, typed })
	await app.ask('players.keepTyped', { typed: { givenName: 'Bo' } })
	await app.ask('session.lock')
	app.clock.ms = Date.parse('2036-04-18T09:00:00Z')
	await app.ask('session.unlock', { passphrase })
	await app.ask('retention.destroy', {
		playerId,
		reason: 'kept long enough',
		name: 'zoe marlowe-nguyen',
		alsoBackups: false,
	})
	expect(await app.ask('players.typed', { playerId })).toEqual({})
	expect((await app.ask('players.typed')).typed).toEqual({ givenName: 'Bo' })
	app.close()
})
test('what was acknowledged is there after kill -9', { timeout: 60_000 }, async () => {
	const here = folder()
	const app = openNow(here, noPage)
	await app.ask('session.setUp', { clinic, passphrase })
	const playerId = String((await app.ask('players.save', { player })).playerId)
	app.close()
	const { lines } = await runUntilKilled(script, [here, playerId, passphrase], 40, 3)
	const acknowledged = Number(lines.at(-1))
	const again = openNow(here, noPage)
	await again.ask('session.unlock', { passphrase })
	const { typed: kept } = await again.ask('players.typed', { playerId })
	expect(Number(kept.club.replace('Rovers ', ''))).toBeGreaterThanOrEqual(acknowledged)
	expect((await again.ask('session.status')).warnings).toEqual([])
	again.close()
})
