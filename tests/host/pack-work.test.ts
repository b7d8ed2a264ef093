/**
 * Work with a pack is watched while it goes on, and cancelled it leaves nothing: no file, no part of
 * one, no note, no record, no draft that is not as before.
 */
import { readdirSync, readFileSync } from 'node:fs'
import { afterEach, beforeEach, describe, expect, test } from 'vitest'
import { folder, type Opened, open, passphrase, signed, withPlayer } from './bench-app.ts'
import { back, laptopOf, measured, packed, packPassphrase, stick } from './bench-pack.ts'

interface Progress {
	running: boolean
	what?: string
	step?: string
	done?: number
	total?: number
	mayCancel?: boolean
}
const progress = (app: Opened): Promise<Progress> => app.ask('outreach.progress')
/** Looks at the work again and again while it goes on. @param look may end it */
async function seenDuring<T>(
	app: Opened,
	work: Promise<T>,
	look: (seen: Progress) => unknown = () => {},
): Promise<Progress[]> {
	const seen: Progress[] = []
	const ended = { is: false }
	const end = () => {
		ended.is = true
	}
	work.then(end, end)
	while (!ended.is) {
		const now = await progress(app)
		if (now.running) seen.push(now)
		await look(now)
		await new Promise((resolve) => setImmediate(resolve))
	}
	return seen
}
const outcome = (work: Promise<unknown>): Promise<{ code: string; message: string }> =>
	work.then(
		() => ({ code: 'done', message: '' }),
		(error: Error) => ({
			code: /Cancelled|Stopped/.exec(error.message)?.[0] ?? '',
			message: error.message,
		}),
	)
/** Cancels as soon as a step is seen. @returns how the work ended */
async function cancelAt(app: Opened, step: string, begin: () => Promise<unknown>) {
	const work = begin()
	const ended = outcome(work)
	const seen = await seenDuring(app, work, async (now) => {
		if (now.step === step && now.mayCancel) await app.ask('outreach.cancel')
	})
	expect(seen.map((one) => one.step)).toContain(step)
	return ended
}
const many = async () => {
	const { app, playerId } = await withPlayer()
	const ids = [playerId]
	for (const name of [
		'Ada',
		'Bea',
		'Cleo',
		'Dara',
		'Edie',
		'Fay',
		'Gil',
		'Hana',
		'Ina',
		'Joan',
		'Kaja',
	])
		ids.push(
			(
				await app.ask('players.save', {
					player: {
						givenName: name,
						familyName: 'Fieldling',
						birthDate: '2001-03-03',
						sex: 'female',
					},
				})
			).playerId,
		)
	for (const id of ids) await signed(app, id, measured, '2027-01-10')
	await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	return { app, ids, playerId }
}
let home: Awaited<ReturnType<typeof many>>
beforeEach(async () => {
	home = await many()
}, 60_000)
afterEach(() => home.app.close())
const packOf = (where: string) => ({
	playerIds: home.ids,
	history: 'all',
	folder: where,
	passphrase: packPassphrase,
	expires: '2027-02-10',
})
/** All that could tell of a pack that was not made. */
const noted = async (app: Opened) => [
	(await app.ask('outreach.list')).out,
	(await app.ask('outreach.list')).merged,
	(await app.ask('audit.page', { limit: 500 })).rows.filter((row: { function: string }) =>
		['export', 'merge'].includes(row.function),
	),
	await app.ask('players.open', { playerId: home.playerId }).then(({ drafts }) => drafts),
]

describe('making a pack', () => {
	test('tells how many of how many, holds no name in any file name, and is one at a time', async () => {
		const { app } = home
		const where = stick()
		const names = new Set<string>()
		const work = app.ask('outreach.makePack', packOf(where))
		const second = await seenDuring(app, work, async ({ running }) => {
			for (const name of readdirSync(where)) names.add(name)
			if (running && names.size === 0)
				expect((await app.refused('outreach.makePack', packOf(stick()))).code).toBe('outreach.busy')
		})
		const { records, drafts, file } = await work
		expect(new Set(second.map(({ what }) => what))).toEqual(new Set(['pack']))
		const sealing = second.filter(({ step }) => step === 'sealing')
		for (const { done = 0, total } of sealing) {
			expect(total).toBe(records + drafts)
			expect(done).toBeLessThanOrEqual(records + drafts)
		}
		expect(await progress(app)).toEqual({ running: false })
		// what lies on the stick says nothing of anybody, by name or content
		for (const name of names)
			expect(name).toMatch(/^pack-\d{4}-\d\d-\d\d-[0-9a-f]{6}\.lwpack(\.writing)?$/)
		expect(readFileSync(file, 'latin1')).not.toMatch(/Fieldling|Marlowe|Invented Clinic|2001-03-03/)
	})
	test.each(['gathering', 'sealing', 'writing'])(
		'cancelled while %s leaves nothing',
		async (step) => {
			const { app } = home
			const where = stick()
			const before = await noted(app)
			const { code, message } = await cancelAt(app, step, () =>
				app.ask('outreach.makePack', packOf(where)),
			)
			expect(code, message).toBe('Cancelled')
			expect(message).toContain('No pack was made, and nothing was noted as taken along.')
			expect(readdirSync(where)).toEqual([])
			expect(await noted(app)).toEqual(before)
			expect(await progress(app)).toEqual({ running: false })
			// the next one is made as ever
			expect(await packed(app, home.ids)).toMatch(/\.lwpack$/)
		},
	)
	test('locked meanwhile it stops, and leaves nothing', async () => {
		const { app } = home
		const where = stick()
		const work = app.ask('outreach.makePack', packOf(where))
		const ended = outcome(work)
		const locked = { is: false }
		await seenDuring(app, work, async ({ running }) => {
			if (!running || locked.is) return
			locked.is = true
			await app.ask('session.lock')
			// who did not begin it hears nothing of it
			expect(await progress(app)).toEqual({ running: false })
			expect(await app.ask('outreach.cancel')).toEqual({ cancelled: false })
		})
		expect((await ended).code).toBe('Stopped')
		expect(readdirSync(where)).toEqual([])
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('outreach.list')).out).toEqual([])
	})
	test('a record that is written meanwhile is in the pack whole, or the next one carries it', async () => {
		const { app } = home
		const where = stick()
		const work = app.ask('outreach.makePack', packOf(where))
		const wrote = { is: false }
		await seenDuring(app, work, async ({ step }) => {
			if (wrote.is || step === undefined) return
			wrote.is = true
			// the draft that goes along is signed while the pack is gathered
			await signed(app, home.playerId, measured, '2027-01-20')
		})
		const { app: laptop } = await laptopOf((await work).file)
		const { visits, drafts } = await laptop.ask('players.open', { playerId: home.playerId })
		expect(visits.length + drafts.length, 'the visit is there as draft or signed').toBe(2)
		laptop.close()
	})
})
test('a pack that is opened on a new PC is watched there, and cancelled leaves no records', async () => {
	const file = await packed(home.app, home.ids)
	const laptop = open(folder())
	const input = { file, passphrase: packPassphrase }
	expect(
		(await cancelAt(laptop, 'opening', () => laptop.ask('session.moveHere', input))).code,
	).toBe('Cancelled')
	expect((await laptop.ask('session.status')).state).toBe('needs-setup')
	await laptop.ask('session.moveHere', input)
	expect((await laptop.ask('session.status')).state).toBe('locked')
	laptop.close()
})
test('the way back is cancelled without a file or a receipt, and at home nothing is taken in', async () => {
	const { app, ids } = home
	const { app: laptop } = await laptopOf(await packed(app, ids))
	await signed(laptop, home.playerId, measured, '2027-01-19')
	const where = stick()
	const away = { folder: where, passphrase: packPassphrase }
	for (const step of ['gathering', 'verifying', 'sealing'])
		expect(
			(await cancelAt(laptop, step, () => laptop.ask('outreach.makeReturn', away))).code,
			step,
		).toBe('Cancelled')
	expect(readdirSync(where)).toEqual([])
	expect((await laptop.refused('outreach.remove', { receipt: 'none' })).code).toBe(
		'outreach.way-back-not-made',
	)
	const input = { file: await back(laptop), passphrase: packPassphrase }
	const before = await noted(app)
	for (const call of ['outreach.previewMerge', 'outreach.merge'])
		for (const step of ['opening', 'checking']) {
			const { code, message } = await cancelAt(app, step, () => app.ask(call, input))
			expect(code, `${call} ${step}: ${message}`).toBe('Cancelled')
		}
	expect(await noted(app)).toEqual(before)
	const { counts, receipt } = await app.ask('outreach.merge', input)
	expect(counts.added).toBeGreaterThan(0)
	await laptop.ask('outreach.remove', { receipt })
	laptop.close()
})
