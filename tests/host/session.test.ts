/** What the state says and what calls answer agree, also where reading the records fails. */
import { expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { Session } from '../../electron/services/people/session.ts'
import type { Deps } from '../../electron/services/records/deps.ts'
import { keeperOf } from '../../electron/services/records/keep.ts'
import { Memory } from '../../electron/services/records/memory.ts'
import { openerOf } from '../../electron/services/records/open.ts'
import { Store } from '../../electron/store/store.ts'
import { clinic, folder, open, passphrase, pdf, withPlayer } from './bench-app.ts'

/** A session on the records of a folder, whose memory cannot be filled while `isBroken`. */
function breaking(here: string) {
	const now = () => new Date('2027-01-20T10:00:00.000Z')
	const [store, memory] = [new Store(here, { now, cost: 1024 }), new Memory()]
	const fault = { isBroken: true }
	const clear = memory.outreach.clear.bind(memory.outreach)
	Object.defineProperty(memory.outreach, 'pack', {
		get: () => undefined,
		set: (value) => {
			if (fault.isBroken && value === undefined && store.isOpen) throw new TypeError('broken')
		},
	})
	memory.outreach.clear = () => {
		const { isBroken } = fault
		fault.isBroken = false
		clear()
		fault.isBroken = isBroken
	}
	const deps: Deps = {
		store,
		...keeperOf(store, memory, now),
		...openerOf(store, { unread: () => {}, partly: () => {} }),
		renderPdf: async () => pdf,
		protectPdf: async (bytes) => bytes,
		firstPagePdf: async (bytes) => bytes,
		textOfPdf: async () => [],
		now,
		demo: false,
		version: '0',
		room: () => undefined,
		saveSettings: () => {},
		lastPlaces: { get: () => ({}), keep: () => {} },
	}
	return { store, fault, session: new Session(deps, memory) }
}
test('where the records cannot be read after the secret was right, they are locked and it is said', async () => {
	const { app, here } = await withPlayer()
	app.close()
	const { store, fault, session } = breaking(here)
	await expect(session.unlock({ passphrase })).rejects.toThrow('broken')
	expect(store.isOpen).toBe(false)
	expect(session.status()).toMatchObject({
		state: 'locked',
		warnings: [expect.stringMatching(/secret was right.*They are locked again/)],
	})
	expect(session.status().person).toBeUndefined()
	fault.isBroken = false
	await session.unlock({ passphrase })
	expect(session.status()).toMatchObject({ state: 'open', person: { personId: 'owner' } })
	session.lock()
	expect(session.status().warnings, 'said once').toEqual([])
	store.close()
})
test('at no moment of unlocking does the state say open while calls say locked', async () => {
	const { app, here } = await withPlayer()
	app.close()
	const again = open(here)
	const unlocking = again.ask('session.unlock', { passphrase })
	let isDone = false
	const done = unlocking.then(() => {
		isDone = true
	})
	while (!isDone) {
		const { state } = await again.ask('session.status')
		const answer = await again.call('clinic.get', {})
		expect(answer.ok).toBe(state === 'open')
		await new Promise((turn) => setImmediate(turn))
	}
	await done
	again.close()
})
test('only the owner changes the name and the registration under the reports', async () => {
	const { app } = await withPlayer()
	await app.ask('people.save', {
		name: 'Invented clinician',
		registration: 'X2',
		role: 'clinician',
		passphrase: 'clinician words',
	})
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase: 'clinician words' })
	const refused = await app.refused('clinic.save', {
		...clinic,
		clinician: { name: 'B. Other', registration: 'X1' },
	})
	expect(refused.code).toBe('people.owner-only')
	expect(refused.problems?.map(({ path }) => path)).toEqual(['clinician.name'])
	await app.ask('clinic.save', { ...clinic, phone: '555 0101' })
	expect((await app.ask('clinic.get')).clinician).toEqual(clinic.clinician)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	await app.ask('clinic.save', {
		...clinic,
		clinician: { name: 'A. Renamed', registration: 'X9' },
	})
	expect((await app.ask('session.status')).person.name).toBe('A. Renamed')
	app.close()
})
test('the demo is set up under its own short passphrase; no other clinic is', async () => {
	const options = { renderPdf: async () => pdf, scryptCost: 1024 }
	const demo = createApp({ ...options, dataFolder: folder(), demo: true })
	expect((await demo.call('session.setUp', { clinic, passphrase: 'aaaaaaaa' })).ok).toBe(true)
	demo.close()
})
