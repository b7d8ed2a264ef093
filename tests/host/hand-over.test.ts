/** Taking over by passphrase, and what a person who leaves would leave behind. */
import { expect, test } from 'vitest'
import { decideAll } from '../decide.ts'
import { type Opened, passphrase, signed, withPlayer } from './bench-app.ts'
import { laptopOf, packed, packPassphrase } from './bench-pack.ts'
import { found } from './found-visit.ts'

const words = {
	clinician: 'clinician words',
	reception: 'reception words',
	student: 'student words',
}
type Staff = keyof typeof words
const add = async ({ ask }: Opened, role: Staff): Promise<string> =>
	(
		await ask('people.save', {
			name: `Invented ${role}`,
			registration: role === 'clinician' ? 'X2' : '',
			role,
			passphrase: words[role],
		})
	).personId
const unlock = async ({ ask }: Opened, secret: string) => {
	await ask('session.lock')
	await ask('session.unlock', { passphrase: secret })
}
const atWork = async ({ ask }: Opened) => (await ask('session.status')).person.name

test('whoever has no PIN takes over by passphrase, and only by their own', async () => {
	const { app } = await withPlayer()
	const personId = await add(app, 'reception')
	expect((await app.ask('session.people')).people).toMatchObject([
		{ personId: 'owner', hasPin: false },
		{ personId, hasPin: false },
	])
	for (const both of [{}, { pin: '7391', passphrase: words.reception }])
		expect(await app.refused('session.switch', { personId, ...both })).toMatchObject({
			code: 'call.input-cannot-stand',
			problems: [{ path: 'pin' }],
		})
	await app.ask('session.switch', { personId, passphrase: words.reception })
	expect(await atWork(app)).toBe('Invented reception')
	const take = (secret: string) =>
		app.refused('session.switch', { personId: 'owner', passphrase: secret })
	expect((await take(words.reception)).code, 'one’s own opens nobody else').toBe(
		'people.wrong-passphrase',
	)
	expect((await take('not these words')).code).toBe('people.wrong-passphrase')
	expect((await take('nor those words')).code).toBe('people.wrong-passphrase')
	expect((await take(passphrase)).code, 'wrong ones slow the next one down').toBe('people.wait')
	expect(await atWork(app)).toBe('Invented reception')
	app.clock.ms += 2000
	await app.ask('session.switch', { personId: 'owner', passphrase })
	expect((await app.ask('notices.list')).notices[0]).toMatchObject({
		what: 'hand-over',
		whom: 'A. Example',
		times: 3,
	})
	app.close()
})
test('a PIN that is shut opens again once its person took over by passphrase', async () => {
	const { app } = await withPlayer()
	await app.ask('session.setPin', { passphrase, pin: '7391' })
	const personId = await add(app, 'reception')
	await app.ask('session.switch', { personId, passphrase: words.reception })
	for (const pin of ['1379', '8264', '4913', '6207', '5820'])
		await app.refused('session.switch', { personId: 'owner', pin })
	const right = { personId: 'owner', pin: '7391' }
	expect((await app.refused('session.switch', right)).code).toBe('people.barred')
	await app.ask('session.switch', { personId: 'owner', passphrase })
	await app.ask('session.switch', { personId, passphrase: words.reception })
	await app.ask('session.switch', right)
	expect(await atWork(app)).toBe('A. Example')
	app.close()
})
test('on a laptop the passphrase of the pack opens for whoever made it, and for nobody else', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId)
	const clinician = await add(app, 'clinician')
	await unlock(app, words.clinician)
	const { app: laptop } = await laptopOf(await packed(app, [playerId]))
	expect(await atWork(laptop)).toBe('Invented clinician')
	expect((await laptop.ask('session.people')).people).toMatchObject([{ personId: clinician }])
	for (const secret of [packPassphrase, passphrase])
		expect(
			(await laptop.refused('session.switch', { personId: 'owner', passphrase: secret })).code,
		).toBe('people.wrong-passphrase')
	await laptop.ask('session.switch', { personId: clinician, passphrase: packPassphrase })
	laptop.close()
	app.close()
})
test('what a person leaves behind is told before, and the outbox goes to whom the owner names', async () => {
	const { app, playerId } = await withPlayer()
	const [clinician, student] = [await add(app, 'clinician'), await add(app, 'student')]
	const reception = await add(app, 'reception')
	const leaving = (personId: string) => app.ask('people.leaving', { personId })
	const nothing = { drafts: 0, theirsToCountersign: 0, waitForAny: 0, outbox: 0, recall: 0 }
	expect(await leaving(student)).toMatchObject(nothing)

	await unlock(app, words.student)
	await signed(app, playerId, found)
	await unlock(app, words.clinician)
	const { playerId: other } = await app.ask('players.save', {
		player: { givenName: 'Bo', familyName: 'Quill', birthDate: '1994-03-30', sex: 'male' },
	})
	const visitId = await signed(app, other, found)
	await app.ask('visits.amend', { visitId, reason: 'to be looked at again' })
	await decideAll(app.ask, other, '2027-01-20')
	const { itemId } = await app.ask('outbox.add', {
		...{ visitId, kind: 'player', recipientId: 'player', channel: 'print', due: '2027-01-25' },
	})
	await unlock(app, passphrase)
	expect(await leaving(student)).toMatchObject({ ...nothing, theirsToCountersign: 1, recall: 1 })
	expect(await leaving(clinician)).toEqual({
		...{ drafts: 1, theirsToCountersign: 0, waitForAny: 1, outbox: 1, recall: 1 },
		takers: [
			{ personId: 'owner', name: 'A. Example' },
			{ personId: reception, name: 'Invented reception' },
		],
	})
	const off = (outboxTo: string) => ({ personId: clinician, reason: 'left', outboxTo })
	expect(await app.refused('people.retire', off(student))).toMatchObject({
		code: 'people.cannot-take-over',
		problems: [{ path: 'outboxTo' }],
	})
	expect((await app.ask('people.list')).people[1], 'nothing was changed').toMatchObject({
		active: true,
	})
	expect(await app.ask('people.retire', off(reception))).toMatchObject({ handedOver: 1 })
	const [item] = (await app.ask('outbox.list')).items
	expect(item).toMatchObject({ itemId, owner: { name: 'Invented reception' } })
	expect(item.history.at(-1).says).toBe(
		'Invented clinician was taken off: Invented reception looks after it.',
	)
	expect((await app.refused('people.leaving', { personId: clinician })).code).toBe('people.unknown')
	app.close()
})
