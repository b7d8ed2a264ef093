/** What reception is answered: nothing that is private between the player and the clinician. */
import { expect, test } from 'vitest'
import { textOfPdf } from '../../electron/pdf/kept.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { decideAll } from '../decide.ts'
import { withPlayer } from './bench-app.ts'
import { consent } from './outbox-bench.ts'

const massKg = 83.7
const passphrase = 'reception words'
test('reception is refused a page that holds body mass, and reads none elsewhere', async () => {
	const { app, playerId } = await withPlayer(undefined, undefined, async (document) =>
		Buffer.from(`%PDF-1.7 ${JSON.stringify(document)}`),
	)
	await app.ask('people.save', {
		name: 'Invented reception',
		registration: '',
		role: 'reception',
		passphrase,
	})
	const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: {
			...draft.content,
			visit: { ...draft.content.visit, body: { massKg } },
			decisions: {
				...draft.content.decisions,
				insert: {
					left: [{ element: 'heel-cushion', choice: 'add', value: 3, why: 'asked for' }],
				},
			},
		},
	})
	await decideAll(app.ask, playerId, '2027-01-20')
	const { visitId } = await app.ask('visits.sign', { draftId: draft.draftId })
	const { contactId } = await app.ask('outbox.addContact', {
		playerId,
		role: 'laboratory',
		name: 'Invented laboratory',
		email: '',
		emailAgain: '',
		warningsRead: true,
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('laboratory', 'Invented laboratory', 'Rae', 'parent'),
	})
	const { itemId } = await app.ask('outbox.add', {
		visitId,
		kind: 'insert-order',
		recipientId: contactId,
		channel: 'print',
		due: '2027-01-25',
	})
	expect(
		Buffer.from((await app.ask('outbox.look', { itemId })).base64, 'base64').toString(),
	).toContain(String(massKg))
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })
	for (const name of ['outbox.look', 'outbox.print'])
		expect((await app.refused(name, { itemId })).code, name).toBe('visits.private-page')
	const answers = await Promise.all(
		[
			['players.open', { playerId }],
			['players.search', { query: '', limit: 9 }],
			['consents.list', { playerId }],
			['outbox.list', {}],
			['outbox.notes', { playerId }],
			['outbox.unsent', { from: '2027-01-01', limit: 100 }],
			['players.summary', { playerId }],
			['squad.list', {}],
		].map(async ([name, input]) => {
			const answer = await app.ask(name as string, input)
			const bytes = typeof answer.base64 === 'string' ? Buffer.from(answer.base64, 'base64') : ''
			return `${JSON.stringify(answer)} ${bytes}`
		}),
	)
	for (const answer of answers) expect(answer).not.toContain(String(massKg))
	app.close()
})

/** What only those who treat may read: a measure, a note, what was found. */
const secrets = { heelToToeMm: 271.5, notes: 'Sentinel words of the clinician', lungeCm: 3.3 }
test('reception is shown the first page of what it sends, and no whole report', async () => {
	const { app, playerId } = await withPlayer(undefined, undefined, renderPdf)
	await app.ask('people.save', {
		...{ name: 'Invented reception', registration: '', role: 'reception', passphrase },
	})
	const { heelToToeMm, lungeCm, notes } = secrets
	const { draft } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
	const visit = {
		...draft.content.visit,
		...{ notes, screening: { fever: true } },
		feet: { left: { heelToToeMm }, right: { heelToToeMm } },
		ankles: { left: { lungeCm }, right: { lungeCm: 9 } },
	}
	const decisions = { ...draft.content.decisions, referralDone: 'Sent on the same day.' }
	await app.ask('drafts.save', {
		draftId: draft.draftId,
		content: { ...draft.content, visit, decisions },
	})
	await decideAll(app.ask, playerId, '2027-01-20')
	const { visitId } = await app.ask('visits.sign', { draftId: draft.draftId })
	const add = { visitId, channel: 'print', due: '2027-01-25' }
	const { itemId } = await app.ask('outbox.add', { ...add, kind: 'player', recipientId: 'player' })
	const whole = await textOfPdf(
		Buffer.from((await app.ask('outbox.look', { itemId })).base64, 'base64'),
	)
	expect(whole.length).toBeGreaterThan(1)
	await app.ask('session.lock')
	await app.ask('session.unlock', { passphrase })

	const look = await app.ask('outbox.look', { itemId })
	const shown = await textOfPdf(Buffer.from(look.base64, 'base64'))
	expect(shown).toEqual(whole.slice(0, 1))
	await app.ask('outbox.release', {
		itemId,
		sha256: look.sha256,
		compared: true,
		warningsRead: true,
	})

	for (const name of [
		'reports.open',
		'reports.page',
		'visits.open',
		'drafts.open',
		'reports.sheet',
	])
		expect((await app.refused(name, { visitId })).code, name).toBe('call.not-for-this-role')
	app.close()
})
