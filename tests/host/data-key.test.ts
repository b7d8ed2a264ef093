/** The key of the records changes on demand and when a person leaves: who still opens what. */
import { copyFileSync, cpSync, existsSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync, type SQLInputValue } from 'node:sqlite'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'
import { folder, type Opened, open, passphrase, player, withPlayer } from './bench-app.ts'

const person = (name: string, role: string, secret: string) => ({
	name,
	registration: role === 'clinician' ? 'X2' : '',
	role,
	passphrase: secret,
})
const clinician = person('Invented clinician', 'clinician', 'clinician words')
const reception = person('Invented reception', 'reception', 'reception words')
const total = async (app: Opened) =>
	(await app.ask('players.search', { query: '', limit: 10 })).total

/** The records as they lie on the disk, opened by another host. */
function copied(here: string): Opened & { folder: string } {
	const copy = folder()
	cpSync(here, copy, { recursive: true })
	return { ...open(copy), folder: copy }
}
test('changed on demand: everybody unlocks as before, the printed key too, and nothing is lost', async () => {
	const { app, here, recoveryKey } = await withPlayer()
	for (const one of [clinician, reception]) await app.ask('people.save', one)
	expect(await app.ask('people.changeDataKey')).toEqual({})
	await app.ask('players.save', { player: { ...player, givenName: 'Later' } })
	expect(await app.ask('people.changeDataKey')).toEqual({})
	for (const secret of [clinician.passphrase, reception.passphrase, passphrase]) {
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase: secret })
		expect(await total(app)).toBe(2)
	}
	expect((await app.ask('audit.verify')).problems).toEqual([])
	await app.ask('session.lock')
	await app.ask('session.unlockWithRecoveryKey', {
		recoveryKey,
		newPassphrase: 'other good words',
	})
	expect(await total(app)).toBe(2)
	app.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase: 'other good words' })
	expect(await total(again)).toBe(2)
	again.close()
})
test('a person who leaves opens a copy from before, and nothing from after', async () => {
	const { app, here } = await withPlayer()
	const { personId } = await app.ask('people.save', clinician)
	app.close()
	const before = copied(here)
	await before.ask('session.unlock', { passphrase: clinician.passphrase })
	expect(await total(before)).toBe(1)
	before.close()

	const owner = open(here)
	await owner.ask('session.unlock', { passphrase })
	expect(await owner.ask('people.retire', { personId, reason: 'left the clinic' })).toEqual({})
	await owner.ask('players.save', { player: { ...player, givenName: 'Later' } })
	expect((await owner.ask('people.list')).people).toContainEqual(
		expect.objectContaining({ personId, active: false, hasPin: false }),
	)
	await owner.ask('session.lock')
	expect((await owner.refused('session.unlock', { passphrase: clinician.passphrase })).code).toBe(
		'people.wrong-passphrase',
	)
	await owner.ask('session.unlock', { passphrase })
	expect(await total(owner)).toBe(2)
	owner.close()

	await refusedWithSlotOf(before.folder, here, `person-${personId}`, clinician.passphrase)
})
test.each(['changed by its person', 'replaced by the recovery key'])(
	'an old passphrase, %s, opens nothing of today by a slot from a copy of before',
	async (by) => {
		const { app, here, recoveryKey } = await withPlayer()
		app.close()
		const before = copied(here)
		before.close()
		const again = open(here)
		if (by === 'changed by its person') {
			await again.ask('session.unlock', { passphrase })
			await again.ask('session.changePassphrase', { old: passphrase, passphrase: newWords })
		} else
			await again.ask('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase: newWords })
		expect(await total(again)).toBe(1)
		again.close()
		await refusedWithSlotOf(before.folder, here, 'passphrase', passphrase)
	},
)
test('the old recovery key opens nothing of today by a slot from a copy of before', async () => {
	const { app, here, recoveryKey } = await withPlayer()
	app.close()
	const before = copied(here)
	before.close()
	const again = open(here)
	await again.ask('session.unlock', { passphrase })
	await again.ask('session.newRecoveryKey', { passphrase })
	again.close()
	const forged = withSlotOf(before.folder, here, 'recovery')
	await forged.refused('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase: newWords })
	expect((await forged.ask('session.status')).state).toBe('locked')
	forged.close()
})
const newWords = 'other good words'
/** The records of today with a key slot from a copy of before in its place. */
function withSlotOf(before: string, here: string, slot: string): Opened {
	const forged = folder()
	cpSync(here, forged, { recursive: true })
	putSlot(join(forged, 'lastwright.db'), slotOf(join(before, 'lastwright.db'), slot))
	return open(forged)
}
async function refusedWithSlotOf(before: string, here: string, slot: string, secret: string) {
	const forged = withSlotOf(before, here, slot)
	await forged.refused('session.unlock', { passphrase: secret })
	expect((await forged.ask('session.status')).state).toBe('locked')
	forged.close()
}
type Row = Record<string, SQLInputValue>
function slotOf(file: string, slot: string): Row {
	const db = new DatabaseSync(file)
	const row = db.prepare('SELECT * FROM keyslot WHERE slot = ?').get(slot) as Row
	db.close()
	return row
}
function putSlot(file: string, row: Row): void {
	const db = new DatabaseSync(file)
	const names = Object.keys(row)
	db.prepare(
		`INSERT OR REPLACE INTO keyslot (${names.join(', ')}) VALUES (${names.map(() => '?').join(', ')})`,
	).run(...Object.values(row))
	db.close()
}
test('a forgotten passphrase is given anew by the owner, and the person is asked to change it', async () => {
	const { app } = await withPlayer()
	const { personId } = await app.ask('people.save', reception)
	const given = { ...reception, personId, passphrase: 'given by the owner' }
	await app.ask('people.save', given)
	await app.ask('session.lock')
	await app.refused('session.unlock', { passphrase: reception.passphrase })
	await app.ask('session.unlock', { passphrase: given.passphrase })
	expect((await app.ask('session.status')).told).toEqual({ passphraseDue: 'given' })
	for (const weak of ['aaaaaaaa', 'InventedReception1', 'invented clinic'])
		expect(
			(await app.refused('session.changePassphrase', { old: given.passphrase, passphrase: weak }))
				.problems?.[0]?.path,
		).toBe('passphrase')
	await app.ask('session.changePassphrase', {
		old: given.passphrase,
		passphrase: 'words of my own',
	})
	expect((await app.ask('session.status')).told).toBeUndefined()
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'words of my own' })
	expect((await app.ask('session.status')).told).toBeUndefined()
	app.close()
})

const old = fileURLToPath(new URL('../compatibility/fixtures/0.1.0/home/', import.meta.url))
/** Public, as everything in the fixture. */
const secrets = { owner: 'lantern over nine quarries', reception: 'velvet hinge under snow' }

test('records of 0.1.0: a new recovery key first, then the key changes, and who must come is named', async () => {
	const here = folder()
	expect(existsSync(old)).toBe(true)
	for (const name of ['lastwright.db', 'lastwright.head'])
		copyFileSync(join(old, name), join(here, name))
	const app = open(here, '2027-01-21T10:00:00.000Z')
	const told = async () => (await app.ask('session.status')).told
	await app.ask('session.unlock', { passphrase: secrets.reception })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: secrets.owner })
	expect((await told())?.recoveryKeyUnconfirmed, 'the paper of then is believed').toBeUndefined()
	const { people } = await app.ask('people.list')
	const named = (name: string) => people.find((one: { name: string }) => one.name === name)
	expect([named('Dee Okafor').oldKey, named('Bo Varga').oldKey]).toEqual([undefined, true])
	expect((await app.refused('people.changeDataKey')).code).toBe('people.old-recovery-key')
	// whoever leaves goes at once; the key waits for the new paper
	const { personId } = named('Cy Lindqvist')
	expect(await app.ask('people.retire', { personId, reason: 'left the clinic' })).toEqual({
		keyNotChanged: true,
	})
	expect((await told()).keyChangeDue).toBe(true)
	const { recoveryKey } = await app.ask('session.newRecoveryKey', { passphrase: secrets.owner })
	expect(await app.ask('people.changeDataKey')).toEqual({ needNewPassphrase: ['Bo Varga'] })
	expect((await told()).keyChangeDue).toBeUndefined()
	await app.ask('session.lock')
	expect(
		(await app.refused('session.unlock', { passphrase: 'copper kettle sings late' })).code,
	).toBe('people.cannot-unlock')
	await app.ask('session.unlock', { passphrase: secrets.reception })
	await app.ask('session.lock')
	await app.ask('session.unlockWithRecoveryKey', { recoveryKey, newPassphrase: 'other good words' })
	const bo = named('Bo Varga')
	await app.ask('people.save', {
		personId: bo.personId,
		name: bo.name,
		registration: bo.registration,
		role: bo.role,
		passphrase: 'brass door under rain',
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'brass door under rain' })
	// a PIN of the first form still opens, and is stretched anew
	await app.ask('session.switch', { personId: 'owner', pin: '480713' })
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: secrets.reception })
	await app.ask('session.switch', { personId: 'owner', pin: '480713' })
	const { rows } = await app.ask('audit.page', { limit: 200, function: 'update' })
	expect(
		rows.filter(({ purpose }: { purpose: string }) => purpose === 'session.switch'),
	).toHaveLength(1)
	app.close()
})
