/** Coming home: union, counts, questions, clashes, drafts, and a merge that is cut off. */
import { mkdtempSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { readPack, writePack } from '../../electron/store/pack-file.ts'
import { Store } from '../../electron/store/store.ts'
import { type Opened, open, passphrase, player, signed, withPlayer } from './bench-app.ts'
import { laptopOf, packed, packPassphrase, stick } from './bench-pack.ts'

const back = async (laptop: Opened): Promise<string> =>
	(await laptop.ask('outreach.makeReturn', { folder: stick(), passphrase: packPassphrase })).file
const bring = (app: Opened, file: string) =>
	app.ask('outreach.merge', { file, passphrase: packPassphrase })
const measured = { feet: { left: { heelToToeMm: 246 }, right: { heelToToeMm: 249 } } }
async function apart(laptops = 1) {
	const { app, here, playerId } = await withPlayer()
	const file = await packed(app, [playerId])
	const away: Opened[] = []
	for (let at = 0; at < laptops; at++) away.push((await laptopOf(file)).app)
	return { app, here, playerId, away }
}
const balanced = ({ counts }: { counts: Record<string, number> }) => {
	expect(counts.in).toBe(counts.added! + counts.already! + counts.quarantined! + counts.heldBack!)
	expect(counts.after).toBe(counts.before! + counts.added!)
}

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
	test(
		'details: one-sided changes are taken, a field changed on both is asked with both values ' +
			'and the answer stands',
		async () => {
			const {
				app,
				here,
				playerId,
				away: [laptop],
			} = await apart()
			await app.ask('players.save', {
				playerId,
				player: { ...player, club: 'Harrow Rovers', phone: '555-0100' },
			})
			await laptop!.ask('players.save', {
				playerId,
				player: { ...player, club: 'Lane United', email: 'zoe@example.org' },
			})
			expect((await bring(app, await back(laptop!))).questions).toBe(1)
			expect((await app.ask('players.open', { playerId })).player).toMatchObject({
				phone: '555-0100',
				email: 'zoe@example.org',
			})
			const {
				questions: [question],
			} = await app.ask('outreach.list')
			expect(question).toMatchObject({ what: 'details', fields: [{ field: 'club' }] })
			expect(question.fields[0].values.map((one: { shown: string }) => one.shown).sort()).toEqual([
				'Harrow Rovers',
				'Lane United',
			])
			expect(
				(
					await app.refused('outreach.answer', {
						what: 'details',
						id: playerId,
						playerId,
						choices: {},
					})
				).problems?.[0]?.path,
			).toBe('choices.club')
			await app.ask('outreach.answer', {
				what: 'details',
				id: playerId,
				playerId,
				choices: {
					club: question.fields[0].values.find(
						(one: { shown: string }) => one.shown === 'Harrow Rovers',
					).record,
				},
			})
			expect((await app.ask('outreach.list')).questions).toEqual([])
			app.close()
			const later = open(here)
			await later.ask('session.unlock', { passphrase })
			expect((await later.ask('players.open', { playerId })).player).toMatchObject({
				club: 'Harrow Rovers',
				phone: '555-0100',
				email: 'zoe@example.org',
			})
			later.close()
		},
	)
	test.each([
		['home', 'laptop'],
		['laptop', 'home'],
	])(
		'consent refused on the %s and given on the %s: the refusal holds until it is answered',
		async (where) => {
			const {
				app,
				playerId,
				away: [laptop],
			} = await apart()
			const consent = {
				purpose: 'photos',
				recipient: '',
				grantor: { name: 'Rae', relation: 'parent' },
				method: 'verbal',
				given: '2027-01-20',
			}
			await (where === 'home' ? app : laptop!).ask('consents.record', {
				playerId,
				consent: { ...consent, decision: 'deny', given: '2027-01-19' },
			})
			await (where === 'home' ? laptop! : app).ask('consents.record', {
				playerId,
				consent: { ...consent, decision: 'permit' },
			})
			await bring(app, await back(laptop!))
			const check = () => app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' })
			expect(await check()).toMatchObject({
				inForce: false,
				because: expect.stringContaining('stricter'),
			})
			const {
				questions: [question],
			} = await app.ask('outreach.list')
			const permit = question.fields[0].values.find(
				(one: { shown: string }) => one.shown === 'permit',
			).record
			await app.ask('outreach.answer', {
				what: 'consent',
				id: question.id,
				playerId,
				choices: { photos: permit },
			})
			expect(await check()).toMatchObject({ inForce: true })
			app.close()
		},
	)
	test('a consent withdrawn at home stays withdrawn whatever the laptop brings', async () => {
		const { app, playerId } = await withPlayer()
		const consent = {
			purpose: 'photos',
			recipient: '',
			decision: 'permit',
			grantor: { name: 'Rae', relation: 'parent' },
			method: 'verbal',
			given: '2027-01-19',
		}
		const { consentId } = await app.ask('consents.record', { playerId, consent })
		const { app: laptop } = await laptopOf(await packed(app, [playerId]))
		await app.ask('consents.withdraw', {
			playerId,
			consentId,
			withdrawn: '2027-01-20',
			withdrawnBy: 'Rae',
		})
		await laptop.ask('consents.record', { playerId, consent: { ...consent, given: '2027-01-20' } })
		await bring(app, await back(laptop))
		expect(
			await app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' }),
		).toMatchObject({ inForce: false })
		app.close()
	})
	test(
		'a draft edited on both is kept twice; edited on one side it is that one; signed away it ' +
			'is gone',
		async () => {
			const { app, playerId } = await withPlayer()
			const edit = async (at: Opened, notes: string) => {
				const { draft } = await at.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
				await at.ask('drafts.save', {
					draftId: draft.draftId,
					content: { ...draft.content, visit: { ...draft.content.visit, notes } },
				})
				return draft.draftId as string
			}
			await edit(app, 'before')
			const file = await packed(app, [playerId])
			const [one, two, three] = [
				(await laptopOf(file)).app,
				(await laptopOf(file)).app,
				(await laptopOf(file)).app,
			]
			await edit(one, 'by one')
			await bring(app, await back(three))
			expect((await bring(app, await back(one))).draftsBoth).toEqual([])
			expect(
				(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit
					.notes,
			).toBe('by one')
			await edit(two, 'by two')
			const { draftsBoth } = await bring(app, await back(two))
			expect(draftsBoth).toHaveLength(1)
			const { differences } = await app.ask('outreach.compareDrafts', {
				drafts: draftsBoth[0].drafts,
			})
			expect(differences).toEqual([{ path: 'notes', first: 'by one', second: 'by two' }])
			await app.ask('outreach.putDraftAway', { draftId: draftsBoth[0].drafts[0] })
			expect(
				(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit
					.notes,
			).toBe('by two')
			expect(
				(await app.refused('outreach.putDraftAway', { draftId: draftsBoth[0].drafts[1] })).message,
			).toMatch(/only draft/)
			app.close()
		},
	)
	test('a draft signed on the laptop closes the one at home that nobody touched', async () => {
		const { app, playerId } = await withPlayer()
		await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		const { app: laptop } = await laptopOf(await packed(app, [playerId]))
		await signed(laptop, playerId, measured)
		await bring(app, await back(laptop))
		expect(await app.ask('players.open', { playerId })).toMatchObject({
			drafts: [],
			visits: [{ visitDate: '2027-01-20' }],
		})
		app.close()
	})
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
		const altered = records.map((one) =>
			one.kind === 'player'
				? { ...one, value: { playerId, player: { ...player, familyName: 'Altered' } } }
				: one,
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
		await writePack(file, packPassphrase, 1024, about, altered, drafts)
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
			).message,
		).toMatch(/goes out/)
		const { app: stranger } = await withPlayer()
		expect(
			(
				await stranger.refused('outreach.merge', {
					file: await back(laptop!),
					passphrase: packPassphrase,
				})
			).message,
		).toMatch(/belongs to other records/)
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
test("the laptop's audit rows come home as a section of their own, can be read and are checked", async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	const visitId = await signed(laptop!, playerId, measured)
	await laptop!.ask('visits.open', { visitId })
	const file = await back(laptop!)
	const own = (await laptop!.ask('audit.page', { limit: 500 })).rows as {
		seq: number
		function: string
		hash: string
	}[]
	const before = (await app.ask('audit.verify')).rows
	const merged = await bring(app, file)
	balanced(merged)
	const {
		places: [place],
		rows: here,
	} = await app.ask('audit.page', { limit: 500 })
	expect(place).toMatchObject({ rows: merged.trailRows, from: expect.any(String) })
	// rows written after the trail was taken down stay behind: the export itself, and a backup that
	// ended later
	const later = own.slice(0, own.length - merged.trailRows)
	expect(
		later.map((one) => one.function).filter((one) => !['export', 'backup'].includes(one)),
	).toEqual([])
	const { rows } = await app.ask('audit.page', { limit: 500, workstation: place.workstation })
	expect(rows.map((one: { hash: string }) => one.hash)).toEqual(
		own.slice(later.length).map((one) => one.hash),
	)
	expect(
		rows.find((one: { objectRef: string }) => one.objectRef === `visit:${visitId}`),
	).toMatchObject({ function: 'read', person: 'A. Example' })
	expect(
		here.some((one: { workstationId: string }) => one.workstationId === place.workstation),
		'the two trails are not mixed',
	).toBe(false)
	const checked = await app.ask('audit.verify')
	expect(checked).toMatchObject({ problems: [], awayRows: merged.trailRows })
	expect(checked.rows).toBeGreaterThan(before)
	const { csv, rows: lines } = await app.ask('audit.export')
	expect(csv.trimEnd().split('\r\n')).toHaveLength(lines + 1)
	expect((await app.ask('outreach.list')).merged[0]).toMatchObject({
		trailRows: merged.trailRows,
		counts: merged.counts,
	})
	// a later file of the same laptop holds all its rows again: each is shown once
	await laptop!.ask('visits.open', { visitId })
	const second = await bring(app, await back(laptop!))
	expect((await app.ask('audit.page', { limit: 1 })).places).toMatchObject([
		{ rows: second.trailRows },
	])
	expect((await app.ask('audit.verify')).problems).toEqual([])
	app.close()
})
test('a field that two places filled differently is chosen, all others are joined', async () => {
	const {
		app,
		playerId,
		away: [one, two],
	} = await apart(2)
	const edit = async (at: Opened, visit: object) => {
		const { draft } = await at.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		await at.ask('drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, visit: { ...draft.content.visit, ...visit } },
		})
	}
	await edit(one!, { notes: 'by one', body: { massKg: 50 } })
	await edit(two!, { notes: 'by two', body: { statureCm: 160 } })
	await bring(app, await back(one!))
	const {
		draftsBoth: [both],
	} = await bring(app, await back(two!))
	const { differences } = await app.ask('outreach.compareDrafts', { drafts: both.drafts })
	expect(differences.map((line: { path: string }) => line.path).sort()).toEqual([
		'body.massKg',
		'body.statureCm',
		'notes',
	])
	expect(
		(await app.refused('outreach.joinDrafts', { drafts: both.drafts, choices: {} })).problems?.[0]
			?.path,
	).toBe('visit.notes')
	const second = differences.find((line: { path: string }) => line.path === 'notes').second
	await app.ask('outreach.joinDrafts', { drafts: both.drafts, choices: { notes: both.drafts[1] } })
	const { drafts } = await app.ask('players.open', { playerId })
	expect(drafts).toHaveLength(1)
	expect(
		(await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })).draft.content.visit,
	).toMatchObject({ notes: second, body: { massKg: 50, statureCm: 160 } })
	app.close()
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
			Store.prototype.takeIn = function cutOff(one) {
				if (taken++ === stop) throw new Error('the power went')
				real.call(this, one)
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
