import { expect, test } from 'vitest'
import { renderPdf } from '../../electron/pdf/render.ts'
import { clinicalWord } from '../../shared/desk/outbox/message.ts'
import { transmissionSheet } from '../../shared/desk/outbox/sheet.ts'
import type { Clinic } from '../../shared/engine/report/clinic.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { agreed } from '../agreed.ts'
import { clinic, signed } from './bench-app.ts'
import { adult, bench, consent, item, minor, put, release, toRefer } from './outbox-bench.ts'

test(
	'before it leaves: another person named in it, a note on the record, a guardian of a ' +
		'player of age, and rights that are missing',
	async () => {
		const { app, playerId } = await bench()
		await app.ask('players.save', {
			player: { ...minor, givenName: 'Zoë', familyName: 'Nguyễn-Hart' },
		})
		const visitId = await signed(app, playerId, {
			notes: 'Wore the boots of NGUYEN-HART, Zoe last week.',
			screening: toRefer,
		})
		const plain = await put(app, visitId)
		// the player report does not print free notes: nothing to warn of
		expect(await app.ask('outbox.look', { itemId: plain })).toMatchObject({
			warnings: [],
			missing: [expect.stringMatching(/No consent to use of e-mail/)],
			consents: [],
		})
		const { contactId } = await app.ask('outbox.addContact', {
			playerId,
			name: 'Dr Invented',
			role: 'doctor',
			email: 'dr@care.example',
			emailAgain: 'dr@care.example',
			warningsRead: false,
		})
		await app.ask('consents.record', {
			playerId,
			consent: consent('share-with-care', 'Dr Invented', 'Owain Trescott'),
		})
		await app.ask('consents.record', {
			playerId,
			consent: consent('email', 'Dr Invented', 'Owain Trescott'),
		})
		const { noteId } = await app.ask('outbox.addNote', {
			playerId,
			text: 'Court order: the address must not be told.',
		})
		const itemId = await put(app, visitId, { kind: 'referral', recipientId: contactId })
		const { sha256, warnings } = await app.ask('outbox.look', { itemId })
		expect(warnings[0]).toMatch(
			/Court order: the address must not be told. \(A. Example, 2027-01-20\)/,
		)
		expect(
			(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
				.problems?.[0]?.path,
		).toBe('warningsRead')
		await app.ask('outbox.removeNote', { playerId, noteId, reason: 'order was lifted' })
		expect((await app.ask('outbox.look', { itemId })).warnings.join()).not.toMatch(/Court/)
		await app.ask('players.save', {
			playerId,
			player: { ...adult, guardian: { name: 'Gwen Trescott' } },
		})
		const old = await put(app, visitId, { recipientId: 'guardian', channel: 'print' })
		expect((await app.ask('outbox.look', { itemId: old })).warnings).toEqual([
			expect.stringMatching(/is of age: as a guardian Gwen Trescott has no right/),
		])
	},
)
test('the names are looked for in the pages that go out', async () => {
	const { app, playerId, visitId } = await bench()
	await app.ask('players.save', {
		player: { ...minor, givenName: 'Zoë', familyName: 'Nguyễn-Hart' },
	})
	const { draftId } = await app.ask('visits.amend', { visitId, reason: 'added words' })
	const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	await app.ask('drafts.save', {
		draftId,
		content: {
			...draft.content,
			decisions: {
				...draft.content.decisions,
				...agreed,
				warningSigns: ['Do not lend boots to Zoe Nguyen-Hart again'],
			},
		},
	})
	await app.ask('visits.sign', { draftId })
	expect((await app.ask('outbox.look', { itemId: await put(app, visitId) })).warnings).toEqual([
		expect.stringMatching(/names Zoë Nguyễn-Hart, another player on record/),
	])
})
test(
	'a transmission sheet names number, recipient, day, people and digest, and ' + 'nothing clinical',
	async () => {
		const { app, playerId, visitId } = await bench()
		const itemId = await put(app, visitId, { channel: 'hand-over' })
		expect((await app.refused('outbox.sheet', { itemId })).code).toBe('outbox.not-checked-yet')
		await release(app, itemId)
		expect((await app.ask('outbox.sheet', { itemId })).base64).not.toBe('')
		expect((await app.ask('audit.page', { limit: 1, function: 'print' })).rows[0]).toMatchObject({
			objectRef: expect.stringMatching(/^sheet:LW-/),
			playerId,
		})
		expect((await app.ask('audit.verify')).problems).toEqual([])
		const handed = await item(app, itemId)
		for (const channel of ['smtp', 'eml', 'print', 'hand-over'] as const) {
			const sheet = transmissionSheet({
				item: {
					...handed,
					channel,
					sentAt: '2027-01-20T10:00:00.000Z',
					consentIds: ['abcdef12-0000'],
				},
				clinic: clinic as Clinic,
				by: 'A. Example',
				at: '2027-01-21T09:30:00.000Z',
				pages: 3,
			})
			const words = textsIn({ ...sheet, letterhead: null, kind: null })
			// the address and the names of people and clinic stand as they are
			for (const text of words.filter((word) => !word.includes('@')))
				expect(clinicalWord(text), text).toBeUndefined()
			for (const want of [
				'Owain Trescott',
				'20 January 2027',
				'A. Example',
				handed.number,
				'3 pages',
			])
				expect(words.join('\n')).toContain(want)
			expect(words.join('').replaceAll(' ', '')).toContain(handed.sha256)
			expect(words.join()).not.toMatch(/1994-03-30|1994/)
			expect(
				Buffer.from(await renderPdf(sheet))
					.subarray(0, 5)
					.toString(),
			).toBe('%PDF-')
		}
	},
)
test(
	'who must be told of a newer version stands on the player, until they were sent ' + 'it',
	async () => {
		const { app, playerId, visitId } = await bench()
		const send = async (change: object) => {
			const itemId = await put(app, visitId, { channel: 'print', ...change })
			await release(app, itemId)
			await app.ask('outbox.take', { itemId })
			await app.ask('outbox.confirm', { itemId, what: 'sent', note: '' })
			return itemId
		}
		const first = await send({})
		expect((await app.ask('outbox.tell', { playerId })).tell).toEqual([])
		const { draftId } = await app.ask('visits.amend', { visitId, reason: 'size corrected' })
		const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		await app.ask('drafts.save', {
			draftId,
			content: { ...draft.content, decisions: { ...draft.content.decisions, ...agreed } },
		})
		await app.ask('visits.sign', { draftId })
		expect((await app.ask('outbox.tell', { playerId })).tell).toMatchObject([
			{ recipient: 'Owain Trescott', version: 1, latest: 2, visitId, visitDate: '2027-01-20' },
		])
		const { itemId } = await app.ask('outbox.resend', {
			itemId: first,
			version: 'newest',
			reason: 'corrected',
		})
		await release(app, itemId)
		await app.ask('outbox.take', { itemId })
		await app.ask('outbox.confirm', { itemId, what: 'sent', note: '' })
		expect((await app.ask('outbox.tell', { playerId })).tell).toEqual([])
	},
)
