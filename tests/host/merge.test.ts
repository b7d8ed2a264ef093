/** Coming home: union, counts, clashes, duplicates, and a merge that is cut off. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readPack, writePack } from '../../electron/store/pack-file.ts'
import { Store } from '../../electron/store/store.ts'
import { open, passphrase, player, signed, withPlayer } from './bench-app.ts'
import {
	apart,
	back,
	balanced,
	bring,
	measured,
	packed,
	packPassphrase,
	stick,
} from './bench-pack.ts'

describe('home again', () => {
	test(
		'visits and players of the day are added, what was there stays, and twice merged is once ' +
			'merged',
		async () => {
			const {
				app,
				playerId,
				away: [laptop],
			} = await apart()
			await signed(app, playerId, measured, '2027-01-18')
			const visitId = await signed(laptop!, playerId, measured)
			await laptop!.ask('players.save', {
				player: { ...player, givenName: 'New', familyName: 'Comer' },
			})
			const file = await back(laptop!)
			const looked = await app.ask('outreach.previewMerge', { file, passphrase: packPassphrase })
			expect((await app.ask('players.open', { playerId })).visits).toHaveLength(1)
			const first = await bring(app, file)
			balanced(first)
			expect(first.counts).toEqual(looked.counts)
			expect(first.counts).toMatchObject({ quarantined: 0, heldBack: 0 })
			expect((await app.ask('players.open', { playerId })).visits).toHaveLength(2)
			expect((await app.ask('reports.open', { visitId })).base64).not.toBe('')
			expect((await app.ask('players.search', { query: 'comer', limit: 5 })).total).toBe(1)
			const second = await bring(app, file)
			balanced(second)
			expect(second).toMatchObject({ again: true, counts: { added: 0, already: first.counts.in } })
			const { merged } = await app.ask('outreach.list')
			expect(merged).toHaveLength(1)
			expect(merged[0].counts).toEqual(first.counts)
			expect((await app.ask('audit.verify')).problems).toEqual([])
			app.close()
		},
	)
	test('the same person entered on both sides is pointed out and never merged by itself', async () => {
		const {
			app,
			away: [laptop],
		} = await apart()
		const twice = { givenName: 'Tui', familyName: 'Ashdown', birthDate: '2013-05-02', sex: 'male' }
		await app.ask('players.save', { player: twice })
		await laptop!.ask('players.save', { player: { ...twice, familyName: 'Ashdowne' } })
		expect((await bring(app, await back(laptop!))).duplicates).toMatchObject([
			{ name: 'Tui Ashdowne', likeName: 'Tui Ashdown', why: 'same-person' },
		])
		expect((await app.ask('players.search', { query: 'tui', limit: 5 })).total).toBe(2)
		app.close()
	})
	test('same id, other content: put aside and named, and what stands here is not touched', async () => {
		const {
			app,
			playerId,
			away: [laptop],
		} = await apart()
		const { manifest, records, drafts } = await readPack(await back(laptop!), packPassphrase)
		const altered = records.map((record) =>
			record.kind === 'player'
				? { ...record, value: { playerId, player: { ...player, familyName: 'Altered' } } }
				: record,
		)
		const file = join(stick(), 'altered.lwpack')
		const {
			format: _,
			version: __,
			packId: ___,
			sha256: ____,
			records: _____,
			drafts: ______,
			counts: _______,
			...about
		} = manifest
		await writePack(file, packPassphrase, 1024, { about, records: altered, drafts })
		const first = await bring(app, file)
		balanced(first)
		expect(first.quarantined).toMatchObject([
			{ kind: 'player', says: expect.stringContaining('altered on the way') },
		])
		expect((await app.ask('players.open', { playerId })).player.familyName).toBe(player.familyName)
		balanced(await bring(app, file))
		app.close()
	})
	test('wrong way round and another clinic are refused in words', async () => {
		const {
			app,
			playerId,
			away: [laptop],
		} = await apart()
		expect(
			(
				await app.refused('outreach.merge', {
					file: await packed(app, [playerId]),
					passphrase: packPassphrase,
				})
			).code,
		).toBe('outreach.outgoing-pack')
		const { app: stranger } = await withPlayer()
		expect(
			(
				await stranger.refused('outreach.merge', {
					file: await back(laptop!),
					passphrase: packPassphrase,
				})
			).code,
		).toBe('outreach.other-records')
		stranger.close()
		app.close()
	})
	test('three laptops in any order leave the same records, details and questions', async () => {
		const seen: unknown[] = []
		const { app, here, playerId, away } = await apart(3)
		const files: string[] = []
		for (const [at, laptop] of away.entries()) {
			await laptop.ask('players.save', {
				playerId,
				player: { ...player, ...(at === 0 ? { phone: '555-0101' } : { club: `Club ${at}` }) },
			})
			await signed(laptop, playerId, measured, `2027-01-1${at + 1}`)
			files.push(await back(laptop))
		}
		const { file } = await app
			.ask('backups.make', { folder: stick() })
			.then((made) => ({ file: join(made.folder, made.file) }))
		app.close()
		expect(here).not.toBe('')
		for (const order of [
			[0, 1, 2],
			[2, 1, 0],
			[1, 2, 0],
		]) {
			const home = open(mkdtempSync(join(tmpdir(), 'lastwright-order-')))
			await home.ask('session.moveHere', { file })
			await home.ask('session.unlock', { passphrase })
			for (const at of order) await bring(home, files[at]!)
			const { player: now, visits } = await home.ask('players.open', { playerId })
			seen.push({ now, visits, questions: (await home.ask('outreach.list')).questions })
			home.close()
		}
		expect(seen[1]).toEqual(seen[0])
		expect(seen[2]).toEqual(seen[0])
	})
})
test('cut off at any record, a merge leaves nothing half done, and done again it is whole', async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	for (const date of ['2027-01-11', '2027-01-12']) await signed(laptop!, playerId, measured, date)
	await laptop!.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	const file = await back(laptop!)
	const picture = async () => ({
		open: await app.ask('players.open', { playerId }),
		list: await app.ask('outreach.list'),
	})
	const before = await picture()
	const real = Store.prototype.takeIn
	const { added } = (await app.ask('outreach.previewMerge', { file, passphrase: packPassphrase }))
		.counts
	expect(added).toBeGreaterThan(3)
	try {
		for (let stop = 0; stop < added; stop++) {
			let taken = 0
			Store.prototype.takeIn = function cutOff(record) {
				if (taken++ === stop) throw new Error('the power went')
				real.call(this, record)
			}
			await app.refused('outreach.merge', { file, passphrase: packPassphrase })
			expect(await picture(), `after ${stop} records`).toEqual(before)
		}
	} finally {
		Store.prototype.takeIn = real
	}
	balanced(await bring(app, file))
	expect((await app.ask('players.open', { playerId })).visits).toHaveLength(2)
	app.close()
})
