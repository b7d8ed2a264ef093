import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { describe, expect, test } from 'vitest'
import { contract, type SignedVisit } from '../../shared/contract.ts'
import { assess } from '../../shared/engine/assess.ts'
import { digestOf } from '../../shared/engine/plain/canonical.ts'
import {
	clinic,
	draftOf,
	folder,
	measured,
	open,
	passphrase,
	pdf,
	player,
	saved,
	sha256,
	visitDate,
	withPlayer,
} from './counting-app.ts'

describe('who may', () => {
	const openToAll = [
		'session.status',
		'session.setUp',
		'session.unlock',
		'session.unlockWithRecoveryKey',
		'session.moveHere',
		'look.get',
		// each looks who may: see choosing.test.ts
		'places.look',
		'places.newFolder',
		'places.choose',
		// only who began the work hears of it: see pack-work.test.ts
		'outreach.progress',
		'outreach.cancel',
	]
	const guarded = Object.entries(contract)
		.filter(([, row]) => !row.who.includes('nobody'))
		.map(([name]) => name)
	test('only the session calls, and what comes before them, are open to nobody', () => {
		expect(Object.keys(contract).filter((name) => !guarded.includes(name))).toEqual(openToAll)
	})
	test('every other call is refused before set-up, while locked and after closing', async () => {
		const app = open(folder())
		const allRefused = async (when: string) => {
			for (const name of guarded)
				expect((await app.refused(name, {})).code, `${name} ${when}`).toBe('people.locked')
		}
		await allRefused('before set-up')
		await app.ask('session.setUp', { clinic, passphrase })
		await app.ask('session.lock', {})
		await allRefused('while locked')
		await app.ask('session.unlock', { passphrase })
		for (const name of guarded) {
			if (name === 'session.lock') continue
			const answer = await app.call(name, {})
			expect(answer.ok ? '' : answer.code, name).not.toBe('people.locked')
		}
		app.close()
		await allRefused('after closing')
	})
	test.each(['constructor', '__proto__', 'toString', 'session.statu', ''])(
		'there is no call named %j',
		async (name) => {
			const app = open(folder())
			expect((await app.refused(name, {})).code).toBe('call.unknown')
			app.close()
		},
	)
})

describe('a visit from set-up to reopening', () => {
	test('is found, drafted, signed and unchanged after closing', async () => {
		const { app, here, playerId } = await withPlayer()
		for (const query of ['nguyen zoe', 'ZOE marl', 'Nguyễn', 'rovers', '2011-04-17'])
			expect(
				(
					await app.ask<{ cards: { playerId: string }[] }>('players.search', { query, limit: 10 })
				).cards.map((card) => card.playerId),
				query,
			).toEqual([playerId])
		expect((await app.ask('players.search', { query: 'nguyen ines', limit: 10 })).total).toBe(0)

		const { draftId, content } = await saved(app, playerId, { visit: measured })
		expect((await draftOf(app, playerId)).draft).toMatchObject({ draftId, content })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		// each page that applies is drawn once, at signing
		const { pages } = await app.ask<{ pages: unknown[] }>('visits.open', { visitId })
		expect(app.drawn.count).toBe(pages.length)
		expect((await app.refused('drafts.save', { draftId, content })).code).toBe(
			'visits.draft-not-open',
		)
		expect((await app.refused('visits.sign', { draftId })).code).toBe('visits.draft-not-open')

		const report = await app.ask<{ base64: string; sha256: string; fileName: string }>(
			'reports.open',
			{ visitId },
		)
		expect(Buffer.from(report.base64, 'base64').equals(pdf)).toBe(true)
		expect(report.sha256).toBe(sha256(pdf))
		expect(report.fileName).not.toMatch(/marlowe|zo/i)
		const signed = await app.ask<SignedVisit>('visits.open', { visitId })
		app.close()

		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect(await again.ask('session.status', {})).toMatchObject({
			state: 'open',
			clinicName: clinic.name,
			warnings: [],
		})
		expect(await again.ask('clinic.get', {})).toEqual(clinic)
		expect(await again.ask('players.open', { playerId })).toEqual({
			player,
			visits: [{ visitId, visitDate, signedAt: signed.signedAt }],
			drafts: [],
		})
		expect(
			(await again.ask<{ cards: unknown[] }>('players.search', { query: 'nguyen zoe', limit: 1 }))
				.cards,
		).toEqual([expect.objectContaining({ playerId, lastVisit: visitDate, openDraft: false })])
		expect(await again.ask('reports.open', { visitId })).toEqual(report)
		expect(await again.ask('visits.open', { visitId })).toEqual(signed)
		expect((await draftOf(again, playerId, '2027-02-20')).earlier).toEqual([signed.visit])
		expect(again.drawn.count, 'a stored report is never drawn again').toBe(0)
		again.close()
	})
	test('the digest is that of the frozen content, and one changed value breaks it', async () => {
		const { app, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId, { visit: measured })
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		const { digest, ...frozen } = await app.ask<SignedVisit>('visits.open', { visitId })
		expect(frozen).toMatchObject({
			playerId,
			visit: { player, ...measured },
			clinic,
			signedBy: clinic.clinician,
			reportSha256: sha256(pdf),
		})
		expect(frozen.assessment).toEqual(JSON.parse(JSON.stringify(assess(frozen.visit))))
		expect(digestOf(frozen)).toBe(digest)
		expect(digestOf({ ...frozen, visit: { ...frozen.visit, notes: 'changed' } })).not.toBe(digest)
		app.close()
	})
	test(
		'a birth date corrected while a draft is open counts in it at once, and no entry ' + 'is lost',
		async () => {
			const { app, playerId } = await withPlayer()
			const { draftId, content } = await saved(app, playerId, { visit: measured })
			await app.ask('players.save', { playerId, player: { ...player, birthDate: '2011-05-06' } })
			const { draft } = await draftOf(app, playerId)
			expect(draft).toMatchObject({
				draftId,
				content: {
					...content,
					visit: { ...content.visit, player: { ...player, birthDate: '2011-05-06' } },
				},
			})
			app.close()
		},
	)
	test('a corrected player is a new record, and the signed visit keeps the old words', async () => {
		const { app, here, playerId } = await withPlayer()
		const { draftId } = await saved(app, playerId)
		const { visitId } = await app.ask<{ visitId: string }>('visits.sign', { draftId })
		await app.ask('players.save', { playerId, player: { ...player, club: 'Invented United' } })
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect(
			(await again.ask<{ player: { club: string } }>('players.open', { playerId })).player.club,
		).toBe('Invented United')
		expect((await again.ask<SignedVisit>('visits.open', { visitId })).visit.player.club).toBe(
			'Invented Rovers',
		)
		again.close()
	})
})

test('no name, club, note or birth date stands in clear in any file, open or closed', async () => {
	const { app, here, playerId } = await withPlayer()
	const first = await saved(app, playerId, {
		visit: { ...measured, notes: 'limps after training' },
	})
	await app.ask('visits.sign', { draftId: first.draftId })
	const second = await saved(app, playerId, { visit: { notes: 'limps less' } })
	const secrets = [
		'Marlowe',
		'Nguyễn',
		'Zoë',
		'Rovers',
		'2011-04-17',
		'limps',
		'Invented Clinic',
		passphrase,
	]
	const forms = secrets.flatMap((text) => [
		Buffer.from(text, 'utf8'),
		Buffer.from(text, 'utf16le'),
		Buffer.from(
			JSON.stringify(text)
				.slice(1, -1)
				.replace(/[^\x20-\x7e]/g, (one) => `\\u${one.charCodeAt(0).toString(16).padStart(4, '0')}`),
		),
	])
	const look = () => {
		const files = readdirSync(here, { recursive: true, withFileTypes: true })
			.filter((entry) => entry.isFile())
			.map((entry) => ({
				name: entry.name,
				bytes: readFileSync(join(entry.parentPath, entry.name)),
			}))
		// the random id of the draft does stand in clear: the search sees the bytes that were written
		expect(files.some(({ bytes }) => bytes.includes(second.draftId))).toBe(true)
		for (const { name, bytes } of files)
			for (const [index, form] of forms.entries())
				expect(bytes.includes(form), `${secrets[Math.floor(index / 3)]} in ${name}`).toBe(false)
		return files.map(({ name }) => name)
	}
	expect(look()).toContain('lastwright.db-wal')
	await app.ask('session.lock', {})
	look()
	app.close()
	expect(look().sort()).toEqual(['lastwright.db', 'lastwright.head', 'lastwright.lock.db'])
})
