/** Packs: made, opened on a laptop, run out, cut short, brought home and taken off. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, test } from 'vitest'
import { PackRefused, readPack } from '../../electron/store/pack-file.ts'
import { folder, open, passphrase, signed, withPlayer } from './bench-app.ts'
import { laptopOf, measured, packed, packPassphrase, stick } from './bench-pack.ts'

test('a pack carries the chosen players and no others, and the laptop shows what it carries', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, measured, '2027-01-10')
	const { playerId: other } = await app.ask('players.save', {
		player: { givenName: 'Stays', familyName: 'Home', birthDate: '2000-01-01', sex: 'male' },
	})
	await signed(app, other)
	const file = await packed(app, [playerId])
	expect(readFileSync(file, 'latin1')).not.toMatch(/Marlowe|2011-04-17|Invented Clinic/)
	const { manifest, records } = await readPack(file, packPassphrase)
	expect(manifest).toMatchObject({
		direction: 'out',
		expires: '2027-02-10',
		players: [{ playerId, visits: 1 }],
		counts: { player: 1, visit: 1, report: 1 },
	})
	expect(JSON.stringify(records)).not.toContain('Stays')

	const { app: laptop } = await laptopOf(file)
	const { carries } = await laptop.ask('outreach.list')
	expect(carries).toMatchObject({
		expires: '2027-02-10',
		players: [{ name: 'Zoë Marlowe-Nguyễn', visits: 1 }],
		newHere: { drafts: 0 },
	})
	const { cards } = await laptop.ask('players.search', { query: '', limit: 10 })
	expect(cards).toHaveLength(1)
	const { visits } = await laptop.ask('players.open', { playerId })
	expect(visits).toHaveLength(1)
	expect((await laptop.ask('reports.open', { visitId: visits[0].visitId })).base64).not.toBe('')
	expect(
		(
			await laptop.refused('outreach.makePack', {
				playerIds: [playerId],
				history: 'all',
				folder: stick(),
				passphrase: 'another one here',
				expires: '2027-02-10',
			})
		).code,
	).toBe('outreach.packs-at-home')
	expect((await app.ask('outreach.list')).out).toMatchObject([
		{ players: ['Zoë Marlowe-Nguyễn'], home: false },
	])
	expect((await laptop.ask('audit.verify')).problems).toEqual([])
	laptop.close()
	app.close()
})
test('history as much as needed: none, the last visit, all', async () => {
	const { app, playerId } = await withPlayer()
	for (const date of ['2026-01-10', '2027-01-10']) await signed(app, playerId, measured, date)
	for (const [history, visits] of [
		['none', undefined],
		['last', 1],
		['all', 2],
	] as const) {
		const { manifest, records } = await readPack(
			await packed(app, [playerId], { history }),
			packPassphrase,
		)
		expect(manifest.counts.visit, history).toBe(visits)
		expect(manifest.counts.report, history).toBe(visits)
		if (history === 'last')
			expect(records.find(({ kind }) => kind === 'visit')?.value).toMatchObject({
				visit: { visitDate: '2027-01-10' },
			})
	}
	app.close()
})
test('refusals: own passphrase, wrong passphrase, expiry, a PC with records, a file in the way', async () => {
	const { app, playerId } = await withPlayer()
	expect(
		(
			await app.refused('outreach.makePack', {
				playerIds: [playerId],
				history: 'all',
				folder: stick(),
				passphrase,
				expires: '2027-02-10',
			})
		).code,
	).toBe('outreach.passphrase-in-use')
	for (const expires of ['2027-01-19', '2027-12-31'])
		expect(
			(
				await app.refused('outreach.makePack', {
					playerIds: [playerId],
					history: 'all',
					folder: stick(),
					passphrase: packPassphrase,
					expires,
				})
			).code,
			expires,
		).toBe('outreach.expiry-cannot-stand')
	expect(
		(
			await app.refused('outreach.makePack', {
				playerIds: [playerId],
				history: 'all',
				folder: '/nowhere/at/all',
				passphrase: packPassphrase,
				expires: '2027-02-10',
			})
		).code,
	).toBe('places.no-folder')
	const file = await packed(app, [playerId])
	expect((await app.refused('session.moveHere', { file, passphrase: packPassphrase })).code).toBe(
		'backups.records-here-already',
	)
	const laptop = open(folder(), '2027-02-11T09:00:00.000Z')
	expect(
		(await laptop.refused('session.moveHere', { file, passphrase: 'not this one at all' })).code,
	).toBe('outreach.pack-passphrase')
	expect(
		(await laptop.refused('session.moveHere', { file, passphrase: packPassphrase })).code,
	).toBe('outreach.pack-ran-out')
	expect((await laptop.ask('session.status')).state).toBe('needs-setup')
	laptop.close()
	app.close()
})
test('cut short at any byte, or with any bit turned, a pack is refused in words and nothing is ' +
	'changed', async () => {
	const { app, playerId } = await withPlayer()
	const file = await packed(app, [playerId])
	const whole = readFileSync(file)
	const cut = join(stick(), 'cut.lwpack')
	for (let long = 0; long < whole.length; long++) {
		writeFileSync(cut, whole.subarray(0, long))
		await expect(readPack(cut, packPassphrase), `${long} of ${whole.length} bytes`).rejects.toThrow(
			PackRefused,
		)
	}
	for (let at = 0; at < whole.length; at += 97) {
		const turned = Buffer.from(whole)
		turned[at]! ^= 1
		writeFileSync(cut, turned)
		const told = await readPack(cut, packPassphrase).catch((error) => error)
		expect(told, `bit at ${at}`).toBeInstanceOf(PackRefused)
		// what came altered is never taken for a wrong passphrase, nor the reverse
		expect(told.why, `bit at ${at}`).not.toBe('outreach.pack-passphrase')
	}
	const wrong = await readPack(file, 'not this one at all').catch((error) => error)
	expect([wrong.why, wrong.message]).toEqual([
		'outreach.pack-passphrase',
		expect.stringContaining('The file itself is whole.'),
	])
	// a pack of an earlier version does not tell which it is, and both are said
	const [head = '', ...body] = whole.toString('latin1').split('\n')
	const { headSha256, ...before } = JSON.parse(head)
	expect(headSha256).toMatch(/^[0-9a-f]{64}$/)
	for (const [heading, passphrase] of [
		[before, 'not this one at all'],
		[{ ...before, salt: `A${before.salt.slice(1)}` }, packPassphrase],
	]) {
		writeFileSync(cut, [JSON.stringify(heading), ...body].join('\n'), 'latin1')
		await expect(readPack(cut, passphrase)).rejects.toMatchObject({
			why: 'outreach.pack-passphrase',
			message: expect.stringMatching(/^Either the passphrase is not .* or the file is damaged/),
		})
	}
	writeFileSync(cut, [JSON.stringify(before), ...body].join('\n'), 'latin1')
	expect((await readPack(cut, packPassphrase)).unknown).toEqual([])
	app.close()
}, 120_000)
test('a pack that ran out opens nothing but the way home', async () => {
	const { app, playerId } = await withPlayer()
	const { app: laptop } = await laptopOf(await packed(app, [playerId]))
	await laptop.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	laptop.clock.ms = Date.parse('2027-02-11T09:00:00.000Z')
	await laptop.ask('session.unlock', { passphrase: packPassphrase })
	expect((await laptop.refused('drafts.open', { playerId, visitDate: '2027-02-11' })).code).toBe(
		'outreach.pack-ran-out',
	)
	const { file } = await laptop.ask('outreach.makeReturn', {
		folder: stick(),
		passphrase: packPassphrase,
	})
	await app.ask('outreach.merge', { file, passphrase: packPassphrase })
	expect((await app.ask('players.open', { playerId })).drafts).toHaveLength(1)
	laptop.close()
	app.close()
})
test('after a verified merge the laptop is emptied on request and keeps a register line', async () => {
	const { app, playerId } = await withPlayer()
	await signed(app, playerId, measured, '2027-01-10')
	const { app: laptop, here } = await laptopOf(await packed(app, [playerId]))
	expect((await laptop.refused('outreach.remove', { receipt: 'aaaa-bbbb-cccc' })).code).toBe(
		'outreach.way-back-not-made',
	)
	await signed(laptop, playerId, measured)
	const back = await laptop.ask('outreach.makeReturn', {
		folder: stick(),
		passphrase: packPassphrase,
	})
	const { receipt } = await app.ask('outreach.merge', {
		file: back.file,
		passphrase: packPassphrase,
	})
	expect((await laptop.refused('outreach.remove', { receipt: 'aaaa-bbbb-cccc' })).code).toBe(
		'outreach.other-receipt',
	)
	await laptop.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	expect((await laptop.refused('outreach.remove', { receipt })).code).toBe('outreach.entered-since')
	const again = await laptop.ask('outreach.makeReturn', {
		folder: stick(),
		passphrase: packPassphrase,
	})
	const second = await app.ask('outreach.merge', { file: again.file, passphrase: packPassphrase })
	expect(await laptop.ask('outreach.remove', { receipt: second.receipt })).toMatchObject({
		lines: 1,
	})
	expect((await laptop.ask('players.search', { query: '', limit: 10 })).total).toBe(0)
	expect((await laptop.ask('outreach.list')).carries.removedAt).toBeTruthy()
	laptop.close()
	const bytes = Buffer.concat(
		readdirSync(here)
			.filter((name) => name.endsWith('.db'))
			.map((name) => readFileSync(join(here, name))),
	)
	expect(bytes.length).toBeGreaterThan(0)
	const later = open(here)
	await later.ask('session.unlock', { passphrase: packPassphrase })
	expect((await later.ask('retention.register')).lines).toMatchObject([
		{ name: 'Zoë Marlowe-Nguyễn', rule: 'pack brought home' },
	])
	expect((await later.ask('audit.verify')).problems).toEqual([])
	expect((await app.ask('players.open', { playerId })).visits).toHaveLength(2)
	later.close()
	app.close()
})
