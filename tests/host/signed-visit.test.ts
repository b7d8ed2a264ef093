/** The life of a visit after signing: given out, amended, noted, in error, countersigned. */
import { describe, expect, test } from 'vitest'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { documentSentences } from '../../shared/engine/words/speak.ts'
import { agreed } from '../agreed.ts'
import { open, passphrase, signed, withPlayer } from './bench-app.ts'

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
					decisions: { ...draft.content.decisions, ...agreed },
				},
			})
			await app.ask('visits.sign', { draftId })
			const [first, second] = drawn.filter(({ kind, draft }) => kind === 'player' && !draft)
			expect(first?.subject).toContainEqual(['Status', 'Signed, version 1'])
			expect(second?.subject).toContainEqual(['Status', 'Amended, version 2'])
			expect(second?.blocks).toContainEqual({
				kind: 'alert',
				title: documentSentences['amended.title'],
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
		expect(html).toContain(`<h1>${documentSentences['player.title']}</h1>`)
		expect(html).toContain('Signed, version 1')
		expect(html).not.toMatch(/<script|undefined|NaN/)
		app.close()
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
			expect((await app.refused('visits.amend', { visitId, reason: 'again' })).code).toBe(
				'visits.draft-open-already',
			)
			const { draft, earlier } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
			expect([draft.draftId, earlier]).toEqual([draftId, []])
			expect((await app.ask('players.open', { playerId })).drafts).toEqual([
				expect.objectContaining({
					draftId,
					amends: { visitId, visitDate: first.visit.visitDate, version: 1 },
				}),
			])
			// what was agreed to is asked anew for each version
			expect(draft.content.decisions).not.toHaveProperty('agreement')
			expect(
				(await app.refused('visits.sign', { draftId })).problems?.map(({ path }) => path),
			).toEqual(
				['explainedTo', 'explained', 'answer', 'by'].map((key) => `decisions.agreement.${key}`),
			)
			await app.ask('drafts.save', {
				draftId,
				content: {
					...draft.content,
					visit: { ...draft.content.visit, notes: 'right side' },
					decisions: { ...draft.content.decisions, ...agreed },
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
			const report = (version?: number) => again.ask('reports.open', { visitId, version })
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
		expect((await app.refused('visits.amend', { visitId, reason: 'too late' })).code).toBe(
			'visits.in-error',
		)
		expect(
			(await app.refused('reports.handedOver', { visitId, recipient: 'R', channel: 'send' })).code,
		).toBe('visits.in-error')
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
		expect((await app.refused('visits.countersign', { visitId, text: '' })).code).toBe(
			'call.not-for-this-role',
		)
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase })
		expect((await app.ask('players.open', { playerId })).visits[0].awaitsCountersign).toBe(true)
		expect(
			(await app.refused('reports.handedOver', { visitId, recipient: 'R', channel: 'send' })).code,
		).toBe('visits.not-countersigned')
		await app.ask('visits.countersign', { visitId, text: 'seen together' })
		expect((await app.refused('visits.countersign', { visitId, text: '' })).code).toBe(
			'visits.countersigned-already',
		)
		await app.ask('reports.handedOver', { visitId, recipient: 'R', channel: 'send' })
		app.close()
	})
})
