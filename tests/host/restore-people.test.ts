/** A restore brings back no passphrase, nobody who left, and no consent that was withdrawn. */
import { expect, test } from 'vitest'
import { passphrase, withPlayer } from './bench-app.ts'
import { consent } from './outbox-bench.ts'
import { later, leaveAll, linesOf, listAfter, restored, staff, theirs } from './restore-bench.ts'

const name = 'Zoë Marlowe-Nguyễn'

test('a person who was taken off stays taken off, with the slot; an old passphrase opens nothing', async () => {
	const { app } = await withPlayer()
	const { personId } = await app.ask('people.save', { ...staff, passphrase: theirs })
	const { file } = await app.ask('backups.make')
	later(app)
	await app.ask('people.retire', { personId, reason: 'left the clinic' })
	const changed = 'quiet copper lanterns at noon'
	await app.ask('session.changePassphrase', { old: passphrase, passphrase: changed })
	await app.ask('backups.restore', { file })
	expect((await app.refused('session.unlock', { passphrase: theirs })).code).toBe(
		'people.wrong-passphrase',
	)
	expect((await app.refused('session.unlock', { passphrase })).code).toBe('people.wrong-passphrase')
	await app.ask('session.unlock', { passphrase: changed })
	const { people } = await app.ask('people.list')
	expect(people.find((one: { personId: string }) => one.personId === personId)).toMatchObject({
		active: false,
	})
	const lines = await linesOf(app)
	expect(lines.map((line: { what: string; says: string }) => [line.what, line.says])).toEqual([
		['person', expect.stringMatching(/B\. Example was taken off after the backup and stays/)],
		['passphrase', expect.stringMatching(/passphrase of A\. Example was changed/)],
	])
	expect((await app.ask('session.status')).warnings).toEqual([
		expect.stringMatching(/After the restore/),
	])
	await leaveAll(app)
	expect((await app.ask('session.status')).warnings).toEqual([])
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
test('the owner lets a person in again by a new passphrase, or takes one off who was added', async () => {
	const { app } = await withPlayer()
	const { personId } = await app.ask('people.save', { ...staff, passphrase: theirs })
	const { file } = await app.ask('backups.make')
	later(app)
	await app.ask('people.retire', { personId, reason: 'left the clinic' })
	const other = await app.ask('people.save', {
		...{ name: 'C. Example', registration: '', role: 'reception' },
		passphrase: 'seven kettles in the orchard',
	})
	await restored(app, file)
	const { restoreId, lines } = await listAfter(app)
	const lineOf = (id: string) => lines.find(({ lineId }: { lineId: string }) => lineId.includes(id))
	expect(lineOf(personId).choices).toEqual([
		expect.objectContaining({ choice: 'as-before', asksPassphrase: false }),
		expect.objectContaining({ choice: 'as-in-backup', asksPassphrase: true }),
	])
	const decide = (id: string, passphrase?: string) => ({
		restoreId,
		decisions: [{ lineId: lineOf(id).lineId, choice: 'as-in-backup', passphrase }],
	})
	expect((await app.refused('backups.decide', decide(personId))).code).toBe(
		'people.passphrase-missing',
	)
	expect((await listAfter(app)).open).toBe(2)
	const anew = 'twelve violet ladders in rain'
	await app.ask('backups.decide', decide(personId, anew))
	await app.ask('backups.decide', decide(other.personId))
	expect((await app.refused('backups.decide', decide(other.personId))).code).toBe(
		'backups.cannot-go-that-way',
	)
	expect(
		(await app.ask('people.list')).people.map((one: { name: string; active: boolean }) => [
			one.name,
			one.active,
		]),
	).toEqual(
		expect.arrayContaining([
			['B. Example', true],
			['C. Example', false],
		]),
	)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: anew })
	expect((await app.ask('session.status')).person.name).toBe('B. Example')
	expect((await app.refused('backups.cameBack')).code).toBe('call.not-for-this-role')
	app.close()
})
test('a consent that was withdrawn stays withdrawn, one given later stays, and either may be decided', async () => {
	const { app, playerId } = await withPlayer()
	const { consentId } = await app.ask('consents.record', {
		playerId,
		consent: consent('email', name, 'Rae Marlowe', 'parent'),
	})
	const { file } = await app.ask('backups.make')
	later(app)
	await app.ask('consents.withdraw', {
		...{ playerId, consentId, withdrawn: '2027-01-20', withdrawnBy: 'Rae Marlowe' },
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('photos', '', 'Rae Marlowe', 'parent'),
	})
	await restored(app, file)
	const check = (purpose: string, recipient: string) =>
		app.ask('consents.check', { playerId, purpose, recipient })
	expect((await check('email', name)).because).toMatch(/withdrawn on 20 January 2027/)
	expect((await check('photos', '')).inForce).toBe(true)
	const lines = await linesOf(app, 'consent')
	expect(lines.map((line: { says: string }) => line.says)).toEqual([
		expect.stringMatching(/use of e-mail for Zoë .* was withdrawn after the backup and stays/),
		expect.stringMatching(/photos was given after the backup and stays/),
	])
	const { restoreId } = await listAfter(app)
	await app.ask('backups.decide', {
		restoreId,
		decisions: [{ lineId: lines[0].lineId, choice: 'as-in-backup' }],
	})
	expect((await check('email', name)).inForce).toBe(true)
	expect((await app.ask('consents.list', { playerId })).consents).toHaveLength(3)
	await leaveAll(app)
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
test('what stood before can be restored again, and nobody comes back by that either', async () => {
	const { app } = await withPlayer()
	const { personId } = await app.ask('people.save', { ...staff, passphrase: theirs })
	const { file } = await app.ask('backups.make')
	later(app)
	const before = await restored(app, file)
	later(app)
	await app.ask('people.retire', { personId, reason: 'left the clinic' })
	await restored(app, before)
	expect((await linesOf(app, 'person'))[0].says).toMatch(/taken off after the backup/)
	await leaveAll(app)
	await app.ask('session.lock')
	expect((await app.refused('session.unlock', { passphrase: theirs })).code).toBe(
		'people.wrong-passphrase',
	)
	app.close()
})
