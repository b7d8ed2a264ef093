/** Who is given what: the same twice, an address of somebody else, a birth date that was changed. */
import { expect, test } from 'vitest'
import { type Opened, withPlayer } from './bench-app.ts'
import { adult, bench, consent, minor, put, release, settle, stops } from './outbox-bench.ts'

const mayMail = (app: Opened, playerId: string) =>
	app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })

test('a second sending of one document to one person asks why, and says what was sent', async () => {
	const { app, visitId } = await bench()
	const first = await put(app, visitId, { channel: 'print', again: undefined })
	const asked = await app.refused('outbox.add', {
		visitId,
		kind: 'player',
		recipientId: 'player',
		channel: 'hand-over',
		due: '2027-01-22',
	})
	expect(asked.code).toBe('outbox.second-sending')
	expect(asked.message).toContain('Player report for Owain Trescott is to check already')
	const second = await put(app, visitId, { channel: 'hand-over', again: 'the first was torn' })
	const { items } = await app.ask('outbox.list')
	const told = items.find(({ itemId }: { itemId: string }) => itemId === second)
	expect(told.history.at(-1).says).toContain('Sent again: the first was torn')
	// what was given up before it left was never given
	for (const itemId of [first, second]) await app.ask('outbox.close', { itemId, note: 'not yet' })
	await put(app, visitId, { channel: 'print', again: undefined })
})
test('an address that stands for somebody else is named, whoever that is', async () => {
	const { app, playerId, visitId } = await bench()
	await mayMail(app, playerId)
	const { guardian } = minor
	await app.ask('players.save', {
		player: { ...minor, guardian: { ...guardian, email: adult.email } },
	})
	const itemId = await put(app, visitId)
	const { warnings } = await app.ask('outbox.look', { itemId })
	expect(warnings).toEqual([
		expect.stringContaining('owain@player.example is on record for Rae Ashdown (guardian) too'),
	])
	await expect(release(app, itemId)).rejects.toThrow(/warning/)
})
test('a birth date that differs from the signed document sends nothing', async () => {
	const { app, smtp, playerId, visitId } = await bench()
	await mayMail(app, playerId)
	const itemId = await put(app, visitId)
	await app.ask('players.save', { playerId, player: { ...adult, birthDate: '1984-03-30' } })
	await expect(release(app, itemId)).rejects.toThrow(/born 30 March 1994, the record 30 March 1984/)
	await settle(app)
	expect(smtp.received).toEqual([])
	const add = {
		visitId,
		kind: 'player',
		recipientId: 'player',
		channel: 'print',
		due: '2027-01-22',
	}
	expect((await app.refused('outbox.add', { ...add, again: 'once more' })).code).toBe(
		'outbox.birth-date-differs',
	)
	await app.ask('players.save', { playerId, player: adult })
	await app.ask('outbox.add', { ...add, again: 'once more' })
})
test('the birth date of a minor is for a clinician to change', async () => {
	const { app } = await withPlayer()
	stops.push(() => app.close())
	const passphrase = 'reception words'
	await app.ask('people.save', {
		...{ name: 'Invented reception', registration: '', role: 'reception', passphrase },
	})
	const { playerId } = await app.ask('players.save', { player: minor })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	const older = { ...minor, birthDate: '2001-05-02' }
	const refused = await app.refused('players.save', { playerId, player: older })
	expect([refused.code, refused.problems?.[0]?.path]).toEqual([
		'players.birth-date-by-clinician',
		'player.birthDate',
	])
	// everything else stays theirs, and so does a player of age
	await app.ask('players.save', { playerId, player: { ...minor, club: 'Harrow Rovers' } })
	const { playerId: grown } = await app.ask('players.save', { player: adult })
	await app.ask('players.save', { playerId: grown, player: { ...adult, birthDate: '1993-03-30' } })
	expect((await app.ask('players.open', { playerId })).player.birthDate).toBe(minor.birthDate)
})
test('the password of what was sent in error is withheld', async () => {
	const { app, playerId, visitId } = await bench()
	await mayMail(app, playerId)
	const itemId = await put(app, visitId)
	await release(app, itemId)
	await settle(app)
	expect((await app.ask('outbox.password', { itemId })).password).toMatch(/^\S{19}$/)
	await app.ask('outbox.sentInError', {
		itemId,
		what: 'went to a namesake',
		noticedAt: '2027-01-20T09:00:00.000Z',
	})
	expect((await app.refused('outbox.password', { itemId })).code).toBe('outbox.sent-in-error')
})
