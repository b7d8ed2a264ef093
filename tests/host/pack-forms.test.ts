/** Packs of every form: of program 0.1.0, of later versions, and files that are no packs at all. */
import { execFileSync } from 'node:child_process'
import { readFileSync, truncateSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { readPack } from '../../electron/store/pack-file.ts'
import type { Carried } from '../../shared/desk/outreach/carried.ts'
import { folder, type Opened, open, player, signed, withPlayer } from './bench-app.ts'
import { forged, packOfVersion1 } from './bench-forger.ts'
import {
	apart,
	back,
	balanced,
	bring,
	laptopOf,
	measured,
	packed,
	packPassphrase,
	stick,
} from './bench-pack.ts'

/** Those on a laptop who could take over by PIN. */
const pinsOn = async (laptop: Opened): Promise<unknown[]> =>
	(await laptop.ask('session.people')).people.filter(({ hasPin }: { hasPin: boolean }) => hasPin)

test('a pack names who made it and the records it belongs to, and carries no PIN', async () => {
	const { app, playerId } = await withPlayer()
	await app.ask('session.setPin', { passphrase: 'correct horse', pin: '736251' })
	await app.ask('people.save', {
		name: 'Nobody Needed',
		registration: '',
		role: 'student',
		passphrase: 'a student of her own',
	})
	await signed(app, playerId, measured, '2027-01-18')
	const file = await packed(app, [playerId])
	const { manifest, records } = await readPack(file, packPassphrase)
	expect(manifest).toMatchObject({
		version: 2,
		recordsId: expect.any(String),
		people: [{ personId: 'owner', role: 'owner' }],
	})
	expect(records.filter(({ kind }) => kind === 'person')).toEqual([])
	expect(JSON.stringify({ manifest, records })).not.toMatch(/"pin"|"hash"|Nobody Needed/)
	const { app: laptop } = await laptopOf(file)
	expect((await laptop.ask('people.list')).people).toMatchObject([{ name: 'A. Example' }])
	expect(await pinsOn(laptop)).toEqual([])
	laptop.close()
	app.close()
})
test('a pack passphrase that anybody here has is refused, and whose it is is not told', async () => {
	const { app, playerId } = await withPlayer()
	await app.ask('people.save', {
		name: 'Rae Desk',
		registration: '',
		role: 'reception',
		passphrase: 'a desk of her own',
	})
	const { code, message, problems } = await app.refused('outreach.makePack', {
		playerIds: [playerId],
		history: 'all',
		folder: stick(),
		passphrase: 'a desk of her own',
		expires: '2027-02-10',
	})
	expect(code).toBe('outreach.passphrase-in-use')
	expect(`${message} ${problems?.[0]?.message}`).not.toMatch(/Rae|desk|your/)
	app.close()
})
test('program 0.1.0: its pack opens, without the PINs that it still carried', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, measured, '2027-01-18')
	const { manifest, records, drafts } = await readPack(
		await packed(app, [playerId]),
		packPassphrase,
	)
	const owner: Carried = {
		id: '6f1c1a2e-0000-4000-8000-00000000000a',
		kind: 'person',
		at: manifest.madeAt,
		origin: manifest.home,
		tick: 2,
		value: {
			personId: 'owner',
			slot: 'passphrase',
			name: 'A. Example',
			registration: 'X1',
			role: 'owner',
			active: true,
			pin: { salt: '00', hash: 'abcdef' },
		},
	}
	const { format, version, packId, sha256, counts, ...about } = manifest
	const kept = records.filter(({ kind }) => kind !== 'installation')
	const { app: laptop } = await laptopOf(
		await packOfVersion1({ ...about }, [...kept, owner], drafts),
	)
	expect((await laptop.ask('players.open', { playerId })).visits).toHaveLength(1)
	expect(await pinsOn(laptop)).toEqual([])
	laptop.close()
	app.close()
})
test('form 1 in answer to a pack of form 2 is a forgery: it would need no signature', async () => {
	const {
		app,
		away: [laptop],
	} = await apart()
	const { manifest, records, drafts } = await readPack(await back(laptop!), packPassphrase)
	const { format, version, packId, sha256, counts, ...about } = manifest
	const file = await packOfVersion1(about, records, drafts)
	expect((await app.refused('outreach.merge', { file, passphrase: packPassphrase })).code).toBe(
		'outreach.other-version',
	)
	const unknown = await packOfVersion1({ ...about, answers: 'another-pack' }, records, drafts)
	expect(
		(await app.refused('outreach.merge', { file: unknown, passphrase: packPassphrase })).code,
	).toBe('outreach.pack-not-noted')
	app.close()
})
test('what a newer version adds is named and left out; what it seals otherwise is refused', async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	await laptop!.ask('players.save', { playerId, player: { ...player, club: 'Lane United' } })
	const file = await back(laptop!)
	const newer = await forged(file, ({ written }) => ({
		records: [{ ...written('player', {}, { about: playerId }), mood: 'good' } as Carried],
		manifest: { weather: 'rain' } as object,
	}))
	const { notices, quarantined, counts } = await bring(app, newer)
	expect(notices).toEqual([
		expect.stringMatching(/says more than this one reads: manifest.weather/),
	])
	expect(quarantined).toMatchObject([{ why: 'waits', record: 'entry 1' }])
	balanced({ counts })
	const [head = '', ...body] = readFileSync(file, 'latin1').split('\n')
	const otherwise = { ...JSON.parse(head), version: 3, seal: 'something else' }
	const third = join(stick(), 'third.lwpack')
	writeFileSync(third, [JSON.stringify(otherwise), ...body].join('\n'), 'latin1')
	await expect(readPack(third, packPassphrase)).rejects.toMatchObject({
		why: 'outreach.newer-pack',
	})
	expect((await bring(app, file)).changes).toMatchObject([
		{ lines: ['Club: Lane United, where nothing stood.'] },
	])
	app.close()
})
test('an earlier file of the same laptop, brought in after a later one, takes nothing back', async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	const edit = async (notes: string) => {
		const { draft } = await laptop!.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		const visit = { ...draft.content.visit, notes }
		await laptop!.ask('drafts.save', {
			draftId: draft.draftId,
			content: { ...draft.content, visit },
		})
	}
	await edit('early')
	const early = await back(laptop!)
	await edit('late')
	await bring(app, await back(laptop!))
	const { drafts } = await app.ask('players.open', { playerId })
	const { notices, changes, draftsBoth, counts } = await bring(app, early)
	expect(notices).toEqual([expect.stringMatching(/A later file of this laptop was brought in/)])
	expect({ changes, draftsBoth }).toEqual({ changes: [], draftsBoth: [] })
	balanced({ counts })
	expect((await app.ask('players.open', { playerId })).drafts).toEqual(drafts)
	app.close()
})
test('a pipe, a device, a folder and an enormous file are refused at once, in words', async () => {
	const where = stick()
	const pipe = join(where, 'pipe.lwpack')
	execFileSync('mkfifo', [pipe])
	const long = join(where, 'long.lwpack')
	writeFileSync(long, '{"format":"lastwright-pack"')
	truncateSync(long, 600 * 2 ** 20)
	for (const file of [pipe, '/dev/zero', where, long])
		await expect(readPack(file, packPassphrase), file).rejects.toMatchObject({
			why: 'places.file-refused',
		})
})
test('a pack without its passphrase is asked for it, a wrong one is said to be wrong', async () => {
	const { app, playerId } = await withPlayer()
	const file = await packed(app, [playerId])
	const laptop = open(folder())
	const { code, problems } = await laptop.refused('session.moveHere', { file })
	expect(code).toBe('outreach.passphrase-missing')
	expect(problems?.[0]?.path).toBe('passphrase')
	expect(
		(await laptop.refused('session.moveHere', { file, passphrase: 'forgotten long ago' })).code,
	).toBe('outreach.pack-passphrase')
	laptop.close()
	app.close()
})
test('a clock set back opens no pack that ran out', async () => {
	const { app, playerId } = await withPlayer()
	const file = await packed(app, [playerId])
	const { app: laptop, here } = await laptopOf(file)
	const refused = async () =>
		(await laptop.refused('players.search', { query: '', limit: 10 })).code
	laptop.clock.ms = Date.parse('2027-02-11T09:00:00.000Z')
	await laptop.ask('session.unlock', { passphrase: packPassphrase })
	expect(await refused()).toBe('outreach.pack-ran-out')
	laptop.clock.ms = Date.parse('2027-01-25T09:00:00.000Z')
	expect(await refused()).toBe('outreach.pack-ran-out')
	laptop.close()
	const again = open(here, '2027-01-25T09:00:00.000Z')
	await again.ask('session.unlock', { passphrase: packPassphrase })
	expect((await again.refused('players.search', { query: '', limit: 10 })).code).toBe(
		'outreach.pack-ran-out',
	)
	expect((await again.ask('outreach.list')).carries).toMatchObject({ ranOut: true })
	again.close()
	const other = open(folder(), '2026-12-01T09:00:00.000Z')
	expect((await other.refused('session.moveHere', { file, passphrase: packPassphrase })).code).toBe(
		'outreach.wrong-calendar',
	)
	other.close()
	app.close()
})
