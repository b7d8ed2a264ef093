/** Taking over by PIN: counted for the person aimed at, kept over restarts, told to the owner. */
import { expect, test } from 'vitest'
import { folder, type Opened, open, passphrase, withPlayer } from './bench-app.ts'

const desk = 'reception words'
const pins = { owner: '7391', reception: '2468' }

/** An owner and a receptionist with PINs; the receptionist is at work. */
async function withPins(here = folder()) {
	const { app } = await withPlayer(here)
	await app.ask('session.setPin', { passphrase, pin: pins.owner })
	const { personId } = await app.ask('people.save', {
		name: 'Invented reception',
		registration: '',
		role: 'reception',
		passphrase: desk,
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: desk })
	await app.ask('session.setPin', { passphrase: desk, pin: pins.reception })
	return { app, here, reception: personId as string }
}
const take = (app: Opened, personId: string, pin: string) =>
	app.call('session.switch', { personId, pin })
const wrongPins = ['1379', '8264', '4913', '6207', '5820'] as const
const roleNow = async (app: Opened) => (await app.ask('session.status')).person?.role

test('a PIN switches the person, and whoever took over works by their own role', async () => {
	const { app, reception } = await withPins()
	expect((await app.ask('session.people')).people).toEqual([
		{ personId: 'owner', name: 'A. Example', role: 'owner', hasPin: true },
		{ personId: reception, name: 'Invented reception', role: 'reception', hasPin: true },
	])
	expect((await take(app, 'owner', pins.owner)).ok).toBe(true)
	expect(await roleNow(app)).toBe('owner')
	expect((await take(app, reception, pins.reception)).ok).toBe(true)
	expect((await app.refused('people.list')).code).toBe('call.not-for-this-role')
	app.close()
})
test('reception does not become owner by guessing: five tries, whatever else happens between', async () => {
	const { app, here, reception } = await withPins()
	for (const pin of wrongPins.slice(0, 3)) {
		expect(await take(app, 'owner', pin)).toMatchObject({ ok: false })
		// a right PIN of one's own gives no new tries for another
		expect((await take(app, reception, pins.reception)).ok).toBe(true)
	}
	app.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase: desk })
	expect(await take(again, 'owner', wrongPins[3])).toMatchObject({ ok: false })
	const fifth = await again.refused('session.switch', { personId: 'owner', pin: wrongPins[4] })
	expect(fifth.code).toBe('people.barred')
	expect(await take(again, 'owner', pins.owner), 'the right one comes too late').toMatchObject({
		ok: false,
	})
	expect(await roleNow(again)).toBe('reception')
	expect((await take(again, reception, pins.reception)).ok, 'others are not shut out').toBe(true)
	again.close()
})
test('the passphrase of the person gives new tries, and the owner is told what was tried', async () => {
	const { app, reception } = await withPins()
	for (const pin of wrongPins) await take(app, 'owner', pin)
	await take(app, reception, '9182')
	await app.ask('session.lock')
	app.clock.ms += 3_600_000
	await app.refused('session.unlock', { passphrase: 'not these words' })
	await app.ask('session.unlock', { passphrase })
	const { notices, upTo } = await app.ask('notices.list')
	const tries = notices.slice(0, 3)
	expect(tries).toEqual([
		{
			what: 'unlock',
			times: 1,
			first: '2027-01-20T10:00:00.000Z',
			last: '2027-01-20T10:00:00.000Z',
		},
		{ what: 'pin', whom: 'Invented reception', times: 1, ...atNine },
		{ what: 'pin', whom: 'A. Example', times: 5, ...atNine },
	])
	expect((await app.ask('session.status')).told.notices).toBe(notices.length)
	await take(app, reception, pins.reception)
	expect((await app.ask('session.status')).told?.notices, 'the owner alone').toBeUndefined()
	expect((await take(app, 'owner', pins.owner)).ok, 'the count of the owner is gone').toBe(true)
	await app.ask('notices.seen', { upTo })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	expect((await app.ask('session.status')).told?.notices, 'told once').toBeUndefined()
	app.close()
})
const atNine = { first: '2027-01-20T09:00:00.000Z', last: '2027-01-20T09:00:00.000Z' }

test('the count of a person is neither taken away by anyone else nor shared with them', async () => {
	const { app, reception } = await withPins()
	for (const pin of wrongPins) await take(app, 'owner', pin)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: desk })
	expect(await take(app, 'owner', pins.owner)).toMatchObject({ ok: false })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	expect((await app.ask('people.list')).people).toEqual([
		expect.objectContaining({ personId: 'owner', hasPin: true }),
		expect.not.objectContaining({ pinBarred: true }),
	])
	await take(app, reception, pins.reception)
	expect((await take(app, 'owner', pins.owner)).ok).toBe(true)
	app.close()
})
test.each(['0000', '1234', '4321', '1212', '1122', '1987', '2026', '2580', '123123'])(
	'the PIN %s is refused as easy to guess',
	async (pin) => {
		const { app } = await withPlayer()
		const refused = await app.refused('session.setPin', { passphrase, pin })
		expect(refused.code).toBe('people.easy-pin')
		expect(refused.problems?.[0]?.path).toBe('pin')
		expect((await app.ask('session.people')).people).toMatchObject([{ hasPin: false }])
		app.close()
	},
)
