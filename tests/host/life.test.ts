/** The life of a visit after signing, consent, retention, merging. */

import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { DatabaseSync } from 'node:sqlite'
import { describe, expect, test } from 'vitest'
import { type Consent, consentInForce, defaultAges } from '../../shared/desk/records/consent.ts'
import { notKept } from '../../shared/desk/records/keep.ts'
import { keepUntil, retentionRules } from '../../shared/desk/records/retention.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { open, passphrase, player, signed, withPlayer } from './bench-app.ts'

describe('a signed visit', () => {
	test(
		'prints on the amended report that it is one and what changed; clinical notes are ' +
			'counted, not told',
		async () => {
			const drawn: LwDocument[] = []
			const { app, playerId } = await withPlayer(undefined, undefined, async (document) => {
				drawn.push(document)
				return Buffer.from(`%PDF-1.7 page ${drawn.length}`)
			})
			const visitId = await signed(app, playerId, {
				ankles: { left: { lungeCm: 8 } },
				notes: 'told me in confidence',
			})
			const { draftId } = await app.ask('visits.amend', { visitId, reason: 'sides were swapped' })
			const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
			await app.ask('drafts.save', {
				draftId,
				content: {
					...draft.content,
					visit: {
						...draft.content.visit,
						ankles: { right: { lungeCm: 8 } },
						notes: 'another secret',
					},
					decisions: { ...draft.content.decisions, consentNoted: true },
				},
			})
			await app.ask('visits.sign', { draftId })
			const [first, second] = drawn.filter((one) => !one.draft)
			expect(first?.subject).toContainEqual(['Status', 'Signed, version 1'])
			expect(second?.subject).toContainEqual(['Status', 'Amended, version 2'])
			expect(second?.blocks[0]).toEqual({
				kind: 'alert',
				title: 'This report was amended',
				text:
					'It takes the place of version 1. What changed: Knee to wall, left: not recorded ' +
					'instead of 8 cm; Knee to wall, right: 8 cm instead of not recorded; 1 more entry ' +
					'or decision that is not listed on this page.',
			})
			expect(JSON.stringify(second)).not.toMatch(/secret|confidence/)
			app.close()
		},
	)
	test('is given out as one page for a screen reader that says what was signed', async () => {
		const { app, playerId } = await withPlayer(undefined, undefined, async (document) =>
			Buffer.from(JSON.stringify(document)),
		)
		const visitId = await signed(app, playerId, { ankles: { left: { lungeCm: 8 } } })
		const { html, fileName } = await app.ask('reports.page', { visitId })
		expect(fileName).toBe('report-2027-01-20.html')
		expect(html).toMatch(/<html lang="en">/)
		expect(html).toContain('<h1>Your footwear assessment</h1>')
		expect(html).toContain('Signed, version 1')
		expect(html).not.toMatch(/<script|undefined|NaN/)
		app.close()
		let pages = 0
		const other = await withPlayer(undefined, undefined, async () => Buffer.from(`page ${++pages}`))
		expect(
			(
				await other.app.refused('reports.page', {
					visitId: await signed(other.app, other.playerId),
				})
			).message,
		).toMatch(/would not say the same/)
		other.app.close()
	})
	test(
		'is amended as a new version with reason, difference and a list of whom to tell; the ' +
			'first one stays',
		async () => {
			let pages = 0
			const { app, here, playerId } = await withPlayer(undefined, undefined, async () =>
				Buffer.from(`%PDF-1.7 page ${++pages}`),
			)
			const visitId = await signed(app, playerId, { notes: 'left side' })
			const first = await app.ask('visits.open', { visitId })
			await app.ask('reports.handedOver', { visitId, recipient: 'Rae Example', channel: 'by-hand' })
			const { draftId } = await app.ask('visits.amend', { visitId, reason: 'sides were swapped' })
			expect((await app.refused('visits.amend', { visitId, reason: 'again' })).message).toMatch(
				/one draft/,
			)
			const { draft, earlier } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
			expect([draft.draftId, earlier]).toEqual([draftId, []])
			expect((await app.ask('players.open', { playerId })).drafts).toEqual([
				expect.objectContaining({
					draftId,
					amends: { visitId, visitDate: first.visit.visitDate, version: 1 },
				}),
			])
			expect((await app.refused('visits.sign', { draftId })).problems).toEqual([
				{
					path: 'decisions.consentNoted',
					message: expect.stringContaining('Consent is not noted'),
				},
			])
			await app.ask('drafts.save', {
				draftId,
				content: {
					...draft.content,
					visit: { ...draft.content.visit, notes: 'right side' },
					decisions: { ...draft.content.decisions, consentNoted: true },
				},
			})
			expect(await app.ask('visits.sign', { draftId })).toEqual({ visitId })
			app.close()
			const again = open(here)
			await again.ask('session.unlock', { passphrase })
			expect((await again.ask('players.open', { playerId })).visits).toEqual([
				expect.objectContaining({ visitId, version: 2 }),
			])
			expect(await again.ask('visits.open', { visitId })).toMatchObject({
				version: 2,
				amends: { reason: 'sides were swapped', digest: first.digest },
				visit: { notes: 'right side' },
			})
			const history = await again.ask('visits.history', { visitId })
			expect(history.versions).toEqual([
				expect.objectContaining({ version: 1, differences: [] }),
				expect.objectContaining({ version: 2, reason: 'sides were swapped' }),
			])
			expect(history.versions[1].differences).toContainEqual({
				path: 'visit.notes',
				before: 'left side',
				after: 'right side',
			})
			// the report of each version as it was signed, with its own row in the trail
			const report = (version?: number) =>
				again.ask('reports.open', { visitId, ...(version === undefined ? {} : { version }) })
			expect((await report(1)).sha256).toBe(first.reportSha256)
			expect((await report(1)).fileName).toMatch(/-version-1\.pdf$/)
			expect(await report(2)).toEqual(await report())
			expect((await report()).sha256).toBe(
				(await again.ask('visits.open', { visitId })).reportSha256,
			)
			expect((await again.refused('reports.open', { visitId, version: 3 })).problems).toEqual([
				{ path: 'version', message: 'not kept, given 3, allowed: 1, 2' },
			])
			expect(
				(await again.ask('audit.page', { limit: 50 })).rows.map(
					(row: { objectRef: string }) => row.objectRef,
				),
			).toContain(`report:${visitId} version 1`)
			expect(history.tell).toEqual([
				expect.objectContaining({ recipient: 'Rae Example', version: 1 }),
			])
			await again.ask('reports.handedOver', { visitId, recipient: 'rae example', channel: 'send' })
			expect((await again.ask('visits.history', { visitId })).tell).toEqual([])
			again.close()
		},
	)
	test('entered in error is hidden from what follows and kept; a late entry has its own time', async () => {
		const { app, playerId } = await withPlayer()
		const visitId = await signed(app, playerId)
		await app.ask('visits.addNote', {
			visitId,
			what: 'late-entry',
			text: 'rang on the day after',
			occurredOn: '2027-01-19',
		})
		expect(
			(
				await app.refused('visits.addNote', {
					visitId,
					what: 'late-entry',
					text: 'x',
					occurredOn: '2027-02-19',
				})
			).problems?.[0]?.path,
		).toBe('occurredOn')
		await app.ask('visits.markInError', { visitId, reason: 'wrong player' })
		expect((await app.refused('visits.amend', { visitId, reason: 'too late' })).message).toMatch(
			/in error/,
		)
		expect(
			(await app.refused('reports.handedOver', { visitId, recipient: 'R', channel: 'send' }))
				.message,
		).toMatch(/in error/)
		expect((await app.ask('drafts.open', { playerId, visitDate: '2027-02-20' })).earlier).toEqual(
			[],
		)
		expect((await app.ask('players.open', { playerId })).visits).toEqual([
			expect.objectContaining({ inError: true }),
		])
		expect((await app.ask('visits.open', { visitId })).visitId).toBe(visitId)
		expect(
			(await app.ask('visits.history', { visitId })).notes.map(
				(note: { what: string }) => note.what,
			),
		).toEqual(['late-entry', 'in-error'])
		app.close()
	})
	test('by a student waits for a countersignature before it leaves', async () => {
		const { app, playerId } = await withPlayer()
		await app.ask('people.save', {
			name: 'Invented student',
			registration: '',
			role: 'student',
			passphrase: 'student words',
		})
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase: 'student words' })
		const visitId = await signed(app, playerId)
		expect((await app.refused('visits.countersign', { visitId, text: '' })).message).toMatch(
			/^This is for/,
		)
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('players.open', { playerId })).visits[0].awaitsCountersign).toBe(true)
		expect(
			(await app.refused('reports.handedOver', { visitId, recipient: 'R', channel: 'send' }))
				.message,
		).toMatch(/countersigned/)
		await app.ask('visits.countersign', { visitId, text: 'seen together' })
		expect((await app.refused('visits.countersign', { visitId, text: '' })).message).toMatch(
			/already/,
		)
		await app.ask('reports.handedOver', { visitId, recipient: 'R', channel: 'send' })
		app.close()
	})
})

describe('consent', () => {
	const given: Consent = {
		consentId: 'c1',
		recordedAt: '2027-01-01T00:00:00Z',
		purpose: 'share-with-coach',
		recipient: 'Coach Vale',
		decision: 'permit',
		grantor: { name: 'Rae', relation: 'parent' },
		method: 'written',
		given: '2027-01-01',
	}
	const asked = {
		purpose: 'share-with-coach' as const,
		recipient: 'coach vale',
		on: '2027-02-01',
		birthDate: '2011-04-17',
		ages: defaultAges,
	}
	test.each([
		['stands for its recipient', [given], {}, true],
		['is denied without a record', [], {}, false],
		['is denied for another recipient', [given], { recipient: 'Coach Other' }, false],
		['is denied for another purpose', [given], { purpose: 'email' as const }, false],
		['is denied before it was given', [given], { on: '2026-12-31' }, false],
		['stands on the last day', [{ ...given, expires: '2027-02-02' }], {}, true],
		['is denied from the day it runs out', [{ ...given, expires: '2027-02-01' }], {}, false],
		['is denied once withdrawn', [{ ...given, withdrawn: '2027-01-15' }], {}, false],
		[
			'is denied by a later refusal',
			[given, { ...given, given: '2027-01-20', decision: 'deny' as const }],
			{},
			false,
		],
		['of a guardian ends at the adult age', [given], { on: '2029-04-17' }, false],
		['of a guardian stands the day before', [given], { on: '2029-04-16' }, true],
		[
			'of a young player needs a note on capacity',
			[{ ...given, grantor: { name: 'Z', relation: 'player' as const } }],
			{},
			false,
		],
		[
			'of a young player stands with one',
			[
				{
					...given,
					grantor: { name: 'Z', relation: 'player' as const },
					capacityNote: 'understands what the coach will see',
				},
			],
			{},
			true,
		],
		[
			'of a young player counts by the local age',
			[{ ...given, grantor: { name: 'Z', relation: 'player' as const } }],
			{ ages: { adultYears: 18, ownConsentYears: 14 } },
			true,
		],
	])('%s', (_, consents, more, expected) => {
		const answer = consentInForce(consents, { ...asked, ...more })
		expect(answer.inForce).toBe(expected)
		expect(answer.because.length).toBeGreaterThan(10)
	})
	test('is recorded, asked at the moment of use and withdrawn through the host', async () => {
		const { app, playerId } = await withPlayer()
		const check = () => app.ask('consents.check', { playerId, purpose: 'photos', recipient: '' })
		expect((await check()).inForce).toBe(false)
		const consent = {
			purpose: 'photos',
			recipient: '',
			decision: 'permit',
			grantor: { name: 'Rae', relation: 'parent' },
			method: 'verbal',
			given: '2027-01-20',
			expires: '2027-06-30',
		}
		expect(
			(
				await app.refused('consents.record', {
					playerId,
					consent: { ...consent, given: '2027-02-20' },
				})
			).problems?.[0]?.path,
		).toBe('consent.given')
		expect(
			(
				await app.refused('consents.record', {
					playerId,
					consent: { ...consent, purpose: 'email' },
				})
			).problems?.[0]?.path,
		).toBe('consent.recipient')
		const { consentId } = await app.ask('consents.record', { playerId, consent })
		expect(await check()).toMatchObject({ inForce: true, consentId, expires: '2027-06-30' })
		app.clock.ms = Date.parse('2027-06-30T09:00:00Z')
		expect(
			(await app.call('consents.check', { playerId, purpose: 'photos', recipient: '' })).ok,
		).toBe(false)
		await app.ask('session.unlock', { passphrase })
		expect((await check()).inForce).toBe(false)
		await app.ask('consents.withdraw', {
			playerId,
			consentId,
			withdrawn: '2027-06-01',
			withdrawnBy: 'Rae',
		})
		expect((await check()).because).toMatch(/withdrawn on 2027-06-01/)
		app.close()
	})
})

describe('retention', () => {
	// the check rows of the practice standard, 1.3
	test.each([
		['2010-03-14', '2035-03-14', '2035-03-14'],
		['1999-07-01', '2033-11-20', '2034-11-20'],
		['2009-11-21', '2034-11-21', '2034-11-21'],
		['2009-11-20', '2034-11-20', '2035-11-20'],
	])('born %s, last entry 2026-11-20: %s and %s', (birthDate, australia, england) => {
		expect([
			keepUntil(birthDate, '2026-11-20', retentionRules['australia-7-25']),
			keepUntil(birthDate, '2026-11-20', retentionRules['england-8-25']),
		]).toEqual([australia, england])
	})
	test('what is due is listed, a hold stops it, destruction leaves a line and removes every byte', async () => {
		const { app, here, playerId } = await withPlayer()
		const visitId = await signed(app, playerId)
		const other = (
			await app.ask('players.save', {
				player: { ...player, givenName: 'Bo', familyName: 'Quill', birthDate: '2010-01-01' },
			})
		).playerId
		const otherVisit = await signed(app, other)
		const backup = await app.ask('backups.make')
		await app.ask('session.lock')
		app.clock.ms = Date.parse('2036-04-18T09:00:00Z')
		await app.ask('session.unlock', { passphrase })
		const { due } = await app.ask('retention.due')
		expect(
			due.map((one: { playerId: string; keepUntil: string }) => [one.playerId, one.keepUntil]),
		).toContainEqual([playerId, '2036-04-17'])
		const input = {
			playerId,
			reason: 'kept long enough',
			name: 'zoe marlowe-nguyen',
			alsoBackups: true,
		}
		expect(
			(await app.refused('retention.destroy', { ...input, name: 'Somebody Else' })).problems?.[0]
				?.path,
		).toBe('name')
		await app.ask('retention.hold', { playerId, reason: 'a claim is open', on: true })
		expect((await app.refused('retention.destroy', input)).message).toMatch(/on hold/)
		await app.ask('retention.hold', { playerId, reason: 'claim closed', on: false })
		// a hold is no entry of care: it does not start the clock anew
		const reader = new DatabaseSync(join(here, 'lastwright.db'), { readOnly: true })
		const sealed = (
			reader
				.prepare(
					"SELECT sealed FROM record WHERE kind IN ('player', 'visit', 'report') ORDER BY seq",
				)
				.all() as { sealed: Uint8Array }[]
		).map((row) => Buffer.from(row.sealed).subarray(0, 40))
		reader.close()
		const holding = (wanted = sealed) =>
			readdirSync(here)
				.filter((name) => name !== 'lastwright.lock')
				.map((name) => readFileSync(join(here, name)))
				.reduce((count, bytes) => count + wanted.filter((one) => bytes.includes(one)).length, 0)
		const before = holding()
		expect(before).toBeGreaterThanOrEqual(sealed.length * 2)
		const done = await app.ask('retention.destroy', input)
		expect(done.records).toBeGreaterThanOrEqual(3)
		expect(done.backupsThatStillHold).toEqual([])
		expect(readdirSync(here)).not.toContain(backup.file)
		// three of the six sealed records are the other player's: they stand in the store and in the
		// new backup
		const left = readFileSync(join(here, 'lastwright.db'))
		expect(sealed.map((one) => left.includes(one))).toEqual([false, false, false, true, true, true])
		expect(holding(sealed.slice(0, 3))).toBe(0)
		expect(holding(sealed.slice(3))).toBeGreaterThanOrEqual(6)
		expect((await app.refused('visits.open', { visitId })).message).toMatch(/not in the records/)
		expect((await app.ask('visits.open', { visitId: otherVisit })).visitId).toBe(otherVisit)
		expect((await app.ask('retention.register')).lines).toEqual([
			expect.objectContaining({
				name: 'Zoë Marlowe-Nguyễn',
				from: '2027-01-20',
				to: '2027-01-20',
				destroyedOn: '2036-04-18',
			}),
		])
		expect((await app.ask('audit.verify')).problems).toEqual([])
		app.close()
		const db = new DatabaseSync(join(here, 'lastwright.db'))
		expect(() => db.exec('DELETE FROM record')).toThrow(/never deleted/)
		db.close()
	})
	test('a record that is still to be kept is not destroyed', async () => {
		const { app, playerId } = await withPlayer()
		expect(
			(
				await app.refused('retention.destroy', {
					playerId,
					reason: 'too early',
					name: 'Zoë Marlowe-Nguyễn',
					alsoBackups: false,
				})
			).message,
		).toMatch(/kept until 2036-04-17/)
		app.close()
	})
	test('backups are kept by days, weeks and months, never fewer than one', () => {
		const daily = Array.from({ length: 400 }, (_, back) => {
			const at = new Date(Date.UTC(2027, 5, 30) - back * 86_400_000).toISOString()
			return { file: at, at, reason: 'daily' as const }
		})
		const gone = notKept(daily)
		const kept = daily.filter((one) => !gone.includes(one.file))
		expect(kept.slice(0, 7)).toEqual(daily.slice(0, 7))
		expect(kept.length).toBeLessThanOrEqual(7 + 4 + 12)
		expect(kept.length).toBeGreaterThanOrEqual(18)
		expect(notKept(daily.slice(0, 1))).toEqual([])
	})
})

test(
	'merging two players shows both as one and can be undone; twins and near spellings are ' +
		'pointed out',
	async () => {
		const { app, here, playerId } = await withPlayer()
		const save = async (change: object) =>
			app.ask('players.save', { player: { ...player, ...change } })
		const near = await save({ givenName: 'Zoe', familyName: 'Marlow-Nguyen' })
		expect(near.similar.map((card: { playerId: string }) => card.playerId)).toEqual([playerId])
		expect((await save({ givenName: 'Ines' })).similar.length).toBe(1)
		expect(
			(await save({ givenName: 'Marlowe-Nguyen', familyName: 'Zoe' })).similar.length,
		).toBeGreaterThanOrEqual(2)
		const a = await signed(app, playerId)
		const b = await signed(app, near.playerId, {}, '2027-01-21')
		const total = (await app.ask('players.search', { query: '', limit: 10 })).total
		const { mergeId } = await app.ask('players.merge', {
			from: near.playerId,
			into: playerId,
			reason: 'same person',
		})
		expect(
			(
				await app.refused('players.merge', {
					from: playerId,
					into: near.playerId,
					reason: 'reverse',
				})
			).message,
		).toMatch(/merged before/)
		app.close()
		const again = open(here)
		await again.ask('session.unlock', { passphrase })
		expect((await again.ask('players.search', { query: '', limit: 10 })).total).toBe(total - 1)
		const opened = await again.ask('players.open', { playerId })
		expect(opened.visits.map((visit: { visitId: string }) => visit.visitId)).toEqual([b, a])
		expect(opened.merged).toEqual([{ mergeId, playerId: near.playerId, name: 'Zoe Marlow-Nguyen' }])
		await again.ask('players.unmerge', { mergeId, reason: 'two people after all' })
		expect(
			(await again.ask('players.open', { playerId })).visits.map(
				(visit: { visitId: string }) => visit.visitId,
			),
		).toEqual([a])
		expect(
			(await again.ask('players.open', { playerId: near.playerId })).visits.map(
				(visit: { visitId: string }) => visit.visitId,
			),
		).toEqual([b])
		again.close()
	},
)
