/**
 * The outbox as a whole, against a real mail server: guards, consents at the moment of sending,
 * faults, records, reports, breaches.
 */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { afterEach, expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { clinicalWord } from '../../shared/desk/outbox/message.ts'
import { textsIn } from '../../shared/desk/outbox/others.ts'
import { transmissionSheet } from '../../shared/desk/outbox/sheet.ts'
import type { Clinic } from '../../shared/engine/report/clinic.ts'
import { clinic, folder, type Opened, open, passphrase, signed } from './bench-app.ts'
import { type Smtp, startSmtp, startWire } from './mail-bench.ts'

const stops: (() => Promise<void> | void)[] = []
afterEach(async () => {
	for (const stop of stops.splice(0).reverse()) await stop()
})
const adult = {
	givenName: 'Owain',
	familyName: 'Trescott',
	birthDate: '1994-03-30',
	sex: 'male' as const,
	email: 'owain@player.example',
}
const minor = {
	givenName: 'Tui',
	familyName: 'Ashdown',
	birthDate: '2013-05-02',
	sex: 'male' as const,
	email: 'tui@player.example',
	guardian: {
		name: 'Rae Ashdown',
		relation: 'parent',
		email: 'rae@guardian.example',
		phone: '555 0177',
	},
}
const consent = (purpose: string, recipient: string, by = recipient, relation = 'player') => ({
	purpose,
	recipient,
	decision: 'permit',
	grantor: { name: by, relation },
	method: 'written',
	given: '2027-01-20',
})
async function mailed(port: number, here = folder(), player: object = adult) {
	const app = open(here)
	stops.push(() => app.close())
	await app.ask('session.setUp', {
		clinic: { ...clinic, email: 'desk@clinic.example' },
		passphrase,
	})
	await app.ask('mail.save', {
		smtp: {
			host: '127.0.0.1',
			port,
			security: 'none',
			inSoManyWords: plainWords,
			user: 'desk',
			password: 'right words',
			from: { name: 'Invented Clinic', email: 'desk@clinic.example' },
		},
		clock: { assessWithinDays: 30, authorityWithinHours: 72 },
	})
	const { playerId } = await app.ask('players.save', { player })
	const visitId = await signed(app, playerId)
	return { app, here, playerId: playerId as string, visitId }
}
async function bench(player: object = adult) {
	const smtp = await startSmtp()
	stops.push(smtp.stop)
	const wire = await startWire(smtp.port)
	stops.push(wire.stop)
	return { smtp, wire, ...(await mailed(wire.port, undefined, player)) }
}
const put = async (app: Opened, visitId: string, change: object = {}): Promise<string> =>
	(
		await app.ask('outbox.add', {
			visitId,
			kind: 'player',
			recipientId: 'player',
			channel: 'smtp',
			due: '2027-01-22',
			...change,
		})
	).itemId
async function release(app: Opened, itemId: string) {
	const { sha256 } = await app.ask('outbox.look', { itemId })
	await app.ask('outbox.release', { itemId, sha256, compared: true, warningsRead: false })
}
// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
const item = async (app: Opened, itemId: string): Promise<any> =>
	(await app.ask('outbox.list')).items.find((one: { itemId: string }) => one.itemId === itemId)
/** Until the queue is at rest. */
const settle = async (app: Opened) => {
	await app.ask('outbox.sendNow')
}
const sendings = async (app: Opened, visitId: string) =>
	(await app.ask('visits.history', { visitId })).handedOver

test(
	'checked beside its recipient, sent once, recorded with an audit row; subject and file ' +
		'name are neutral',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		expect(await item(app, itemId)).toMatchObject({
			state: 'to-check',
			protection: 'password',
			due: '2027-01-22',
			ageDays: 0,
			playerName: 'Owain Trescott',
			birthDate: '1994-03-30',
		})
		expect(JSON.stringify(await app.ask('outbox.list'))).not.toContain(
			(await app.ask('outbox.password', { itemId })).password,
		)
		const { sha256 } = await item(app, itemId)
		expect(
			(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
				.message,
		).toMatch(/not looked at/)
		expect(
			(
				await app.refused('outbox.release', {
					itemId,
					sha256,
					compared: false,
					warningsRead: false,
				})
			).problems?.[0]?.path,
		).toBe('compared')
		await release(app, itemId)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'sent', attempts: 1 })
		expect(smtp.received).toHaveLength(1)
		const [{ text, to } = { text: '', to: [] }] = smtp.received
		expect(to).toEqual(['owain@player.example'])
		expect(text).toMatch(/^Subject: Document LW-[0-9A-F]{8} from Invented Clinic\r$/m)
		expect(text).not.toMatch(/^Subject:.*(Owain|report)/im)
		expect(text).not.toContain((await app.ask('outbox.password', { itemId })).password)
		expect(await sendings(app, visitId)).toMatchObject([
			{ recipient: 'Owain Trescott', channel: 'send', version: 1 },
		])
		const { rows } = await app.ask('audit.page', { limit: 50, function: 'send' })
		expect(rows[0]).toMatchObject({
			playerId,
			person: 'A. Example',
			objectRef: expect.stringMatching(/^sending:/),
		})
		expect((await app.ask('audit.verify')).problems).toEqual([])
	},
)
test('consent is asked at the moment of sending: withdrawn while it waits, it does not leave', async () => {
	const { app, smtp, wire, visitId, playerId } = await bench()
	expect(
		(
			await app.refused('outbox.release', {
				itemId: await put(app, visitId),
				sha256: '',
				compared: true,
				warningsRead: false,
			})
		).message,
	).toMatch(/not looked at/)
	const itemId = await put(app, visitId)
	const { sha256 } = await app.ask('outbox.look', { itemId })
	expect(
		(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
			.message,
	).toMatch(/No consent to use of e-mail for Owain/)
	const { consentId } = await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Owain Trescott'),
	})
	wire.cut = 'connect'
	await release(app, itemId)
	await settle(app)
	expect(await item(app, itemId)).toMatchObject({ state: 'ready' })
	await app.ask('consents.withdraw', {
		playerId,
		consentId,
		withdrawn: '2027-01-20',
		withdrawnBy: 'Owain Trescott',
	})
	wire.cut = undefined
	await settle(app)
	expect(await item(app, itemId)).toMatchObject({
		state: 'to-check',
		history: expect.arrayContaining([
			expect.objectContaining({ says: expect.stringMatching(/withdrawn/) }),
		]),
	})
	expect(smtp.received).toHaveLength(0)
	expect(await sendings(app, visitId)).toEqual([])
})
test("a minor's report goes to a consenting guardian's address only", async () => {
	const { app, smtp, visitId, playerId } = await bench(minor)
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'player',
				recipientId: 'player',
				channel: 'smtp',
				due: '2027-01-22',
			})
		).message,
	).toMatch(/minor/)
	const { contactId } = await app.ask('outbox.addContact', {
		playerId,
		name: 'Coach Invented',
		role: 'coach',
		email: 'coach@club.example',
		emailAgain: 'coach@club.example',
		warningsRead: false,
	})
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'guardian',
				recipientId: contactId,
				channel: 'smtp',
				due: '2027-01-22',
			})
		).message,
	).toMatch(/not for a coach/)
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'coach',
				recipientId: contactId,
				channel: 'smtp',
				due: '2027-01-22',
			})
		).problems?.[0]?.path,
	).toBe('consent')
	const itemId = await put(app, visitId, { kind: 'guardian', recipientId: 'guardian' })
	const { sha256 } = await app.ask('outbox.look', { itemId })
	expect(
		(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
			.message,
	).toMatch(/Rae Ashdown/)
	await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Rae Ashdown', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('share-with-coach', 'Coach Invented', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Coach Invented', 'Rae Ashdown', 'parent'),
	})
	await release(app, itemId)
	await release(app, await put(app, visitId, { kind: 'coach', recipientId: contactId }))
	await settle(app)
	expect(smtp.received.map((one) => one.to)).toEqual([
		['rae@guardian.example'],
		['coach@club.example'],
	])
	expect((await app.ask('outbox.password', { itemId })).phone).toBe('555 0177')
})
test('a typed address: twice, with its warnings read, on the record before it is a recipient', async () => {
	const { app, playerId, visitId } = await bench()
	const typed = {
		playerId,
		name: 'Dr Invented',
		role: 'doctor',
		email: 'owian@player.example',
		emailAgain: 'owian@player.example',
		warningsRead: false,
	}
	expect(
		(await app.refused('outbox.addContact', { ...typed, emailAgain: 'owain@player.example' }))
			.problems?.[0]?.path,
	).toBe('emailAgain')
	expect(
		(
			await app.refused('outbox.addContact', {
				...typed,
				email: 'a@b.example, c@d.example',
				emailAgain: 'a@b.example, c@d.example',
			})
		).message,
	).toMatch(/not one e-mail address/)
	const asked = await app.ask('outbox.addContact', typed)
	expect(asked).toMatchObject({ warnings: [expect.stringMatching(/one letter off owain@player/)] })
	expect(asked.contactId).toBeUndefined()
	const { contactId } = await app.ask('outbox.addContact', { ...typed, warningsRead: true })
	const { recipients } = await app.ask('outbox.recipients', { visitId })
	expect(
		recipients.map((one: { recipient: { recipientId: string } }) => one.recipient.recipientId),
	).toEqual(['player', contactId])
	await app.ask('consents.record', {
		playerId,
		consent: consent('share-with-care', 'Dr Invented', 'Owain Trescott'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Dr Invented', 'Owain Trescott'),
	})
	const itemId = await put(app, visitId, { kind: 'referral', recipientId: contactId })
	const { sha256, warnings } = await app.ask('outbox.look', { itemId })
	expect(warnings).toHaveLength(1)
	expect(
		(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
			.message,
	).toMatch(/warning/)
	await app.ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'player',
				recipientId: 'nobody',
				channel: 'smtp',
				due: '2027-01-22',
			})
		).message,
	).toMatch(/not on the record/)
})
test('offline: the queue waits with growing pauses and goes out in order when the network is back', async () => {
	const { app, smtp, wire, visitId, playerId } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	wire.cut = 'connect'
	const ids: string[] = []
	for (let number = 0; number < 4; number++) {
		const itemId = await put(app, visitId)
		await release(app, itemId)
		app.clock.ms += 1000
		ids.push(itemId)
	}
	await settle(app)
	const { queue } = await app.ask('outbox.list')
	expect(queue).toMatchObject({ waiting: 4, says: expect.stringMatching(/Nothing was sent/) })
	expect(Date.parse(queue.retryAt)).toBeGreaterThan(app.clock.ms)
	const tries = wire.conversations
	await app.ask('outbox.list')
	await new Promise((resolve) => setTimeout(resolve, 50))
	expect(wire.conversations, 'nothing is tried before its time').toBe(tries)
	wire.cut = undefined
	app.clock.ms = Date.parse(queue.retryAt) + 1
	await app.ask('outbox.list')
	await expect.poll(() => smtp.received.length).toBe(4)
	expect(smtp.received.map((one) => /Message-ID: <([^@]+)@/.exec(one.text)?.[1])).toEqual(ids)
	await expect
		.poll(async () =>
			(await app.ask('outbox.list')).items.map((one: { state: string }) => one.state),
		)
		.toEqual(['sent', 'sent', 'sent', 'sent'])
})
test.each(['connect', 'EHLO', 'AUTH', 'MAIL', 'RCPT', 'DATA'] as const)(
	'cut at %s: still ready, then sent exactly once',
	async (cut) => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		wire.cut = cut
		await release(app, itemId)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'ready' })
		expect(smtp.received).toHaveLength(0)
		wire.cut = undefined
		await settle(app)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'sent' })
		expect(smtp.received).toHaveLength(1)
	},
)
test.each([
	['message', 0],
	['answer', 1],
] as const)(
	'cut at the %s: uncertain, never sent again by itself; settled by a person',
	async (cut, arrived) => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		wire.cut = cut
		await release(app, itemId)
		await settle(app)
		wire.cut = undefined
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'uncertain' })
		expect(smtp.received).toHaveLength(arrived)
		expect(await sendings(app, visitId)).toEqual([])
		if (arrived) {
			await app.ask('outbox.confirm', { itemId, what: 'sent', note: 'telephoned' })
			expect(await sendings(app, visitId)).toHaveLength(1)
		} else {
			await app.ask('outbox.confirm', { itemId, what: 'again', note: '' })
			await release(app, itemId)
			await settle(app)
			expect(await item(app, itemId)).toMatchObject({ state: 'sent' })
		}
		expect(smtp.received).toHaveLength(1)
	},
)
test(
	'a stop of the program between the last byte and the answer is shown as uncertain at the ' +
		'next start',
	async () => {
		let hold: (() => void) | undefined
		const smtp: Smtp = await startSmtp({
			onData: (stream, _, done) => {
				stream.resume()
				stream.on('end', () => {
					hold = () => done()
				})
			},
		})
		stops.push(smtp.stop)
		const { app, here, visitId, playerId } = await mailed(smtp.port)
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		await release(app, itemId)
		await expect.poll(() => hold !== undefined).toBe(true)
		expect((await app.refused('outbox.close', { itemId, note: '' })).message).toMatch(
			/being sent just now/,
		)
		app.close()
		const again = open(here)
		stops.push(() => again.close())
		await again.ask('session.unlock', { passphrase })
		await expect.poll(async () => (await item(again, itemId)).state).toBe('uncertain')
		hold?.()
	},
)
test('locked while the server thinks: the answer is kept and written after the unlock', async () => {
	let answer: (() => void) | undefined
	const smtp: Smtp = await startSmtp({
		onData: (stream, _, done) => {
			stream.resume()
			stream.on('end', () => {
				answer = () => done()
			})
		},
	})
	stops.push(smtp.stop)
	const { app, visitId, playerId } = await mailed(smtp.port)
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const itemId = await put(app, visitId)
	await release(app, itemId)
	await expect.poll(() => answer !== undefined).toBe(true)
	await app.ask('session.lock')
	answer?.()
	await new Promise((resolve) => setTimeout(resolve, 100))
	await app.ask('session.unlock', { passphrase })
	await expect.poll(async () => (await item(app, itemId)).state).toBe('sent')
	expect(await sendings(app, visitId)).toHaveLength(1)
})
test(
	'a refused recipient is returned, a busy one waits without holding up the others, a ' +
		'refused login stops the queue in words',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		smtp.answers.rcpt = [550, '5.1.1 no such mailbox']
		const lost = await put(app, visitId)
		await release(app, lost)
		await settle(app)
		expect(await item(app, lost)).toMatchObject({ state: 'returned', statusCode: '5.1.1' })
		smtp.answers.rcpt = [450, '4.2.1 busy']
		const busy = await put(app, visitId)
		const { sha256, warnings } = await app.ask('outbox.look', { itemId: busy })
		expect(warnings[0]).toMatch(/returned a message/)
		await app.ask('outbox.release', { itemId: busy, sha256, compared: true, warningsRead: true })
		await settle(app)
		expect(await item(app, busy)).toMatchObject({ state: 'ready', notBefore: expect.any(String) })
		expect((await item(app, busy)).attempts).toBeGreaterThanOrEqual(1)
		delete smtp.answers.rcpt
		smtp.answers.auth = false
		await settle(app)
		expect((await app.ask('outbox.list')).queue.says).toMatch(/refused the login/)
		delete smtp.answers.auth
		await settle(app)
		expect(await item(app, busy)).toMatchObject({ state: 'sent' })
		expect(smtp.received).toHaveLength(1)
	},
)
test('delivery reports are matched by what went with the message', async () => {
	const { app, visitId, playerId } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const [first, second] = [await put(app, visitId), await put(app, visitId)]
	for (const one of [first, second]) await release(app, one)
	await settle(app)
	const bare = 'Final-Recipient: rfc822; owain@player.example\nAction: failed\nStatus: 5.1.1\n'
	expect((await app.ask('outbox.readReport', { text: bare })).read[0].says).toMatch(
		/Several messages/,
	)
	expect(
		(
			await app.ask('outbox.readReport', {
				text: `Reporting-MTA: dns; relay.example\nOriginal-Envelope-Id: ${second}\n\n${bare}`,
			})
		).read[0].itemId,
	).toBe(second)
	expect(await item(app, first)).toMatchObject({ state: 'sent' })
	expect(await item(app, second)).toMatchObject({ state: 'returned', statusCode: '5.1.1' })
	expect((await app.refused('outbox.readReport', { text: 'nothing of the kind' })).message).toMatch(
		/not a delivery report/,
	)
	expect(
		(
			await app.ask('outbox.readReport', {
				text: `${bare.replace('failed', 'delivered').replace('5.1.1', '2.0.0')}`,
			})
		).read[0].itemId,
	).toBe(first)
	expect(await item(app, first)).toMatchObject({ state: 'delivered' })
})
test(
	'draft, print and hand-over leave only when given out and ticked; a newer version is ' +
		'offered; sent in error opens the steps',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const draft = await put(app, visitId, { channel: 'eml' })
		expect((await app.refused('outbox.take', { itemId: draft })).message).toMatch(/not ready/)
		await release(app, draft)
		expect(
			(await app.refused('outbox.confirm', { itemId: draft, what: 'sent', note: '' })).message,
		).toMatch(/not given out/)
		const { base64, fileName } = await app.ask('outbox.take', { itemId: draft })
		expect(Buffer.from(base64, 'base64').toString('latin1').startsWith('X-Unsent: 1\r\n')).toBe(
			true,
		)
		expect(fileName).toMatch(/^message-LW-[0-9A-F]{8}\.eml$/)
		expect(await item(app, draft)).toMatchObject({ state: 'ready' })
		await app.ask('outbox.confirm', { itemId: draft, what: 'sent', note: '' })
		const paper = await put(app, visitId, { channel: 'print' })
		await release(app, paper)
		expect((await app.ask('outbox.take', { itemId: paper })).mediaType).toBe('application/pdf')
		await app.ask('outbox.confirm', { itemId: paper, what: 'sent', note: 'first class' })
		expect((await sendings(app, visitId)).map((one: { channel: string }) => one.channel)).toEqual([
			'send',
			'print',
		])
		expect(smtp.received).toHaveLength(0)

		const waiting = await put(app, visitId, { channel: 'hand-over' })
		const { draftId } = await app.ask('visits.amend', { visitId, reason: 'a typing error' })
		const { draft: opened } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		await app.ask('drafts.save', {
			draftId,
			content: {
				...opened.content,
				decisions: { ...opened.content.decisions, consentNoted: true },
			},
		})
		app.clock.ms += 60_000
		await app.ask('visits.sign', { draftId })
		expect(await item(app, paper)).toMatchObject({ version: 1, newerVersion: 2 })
		const { sha256 } = await app.ask('outbox.look', { itemId: waiting })
		expect(
			(
				await app.refused('outbox.release', {
					itemId: waiting,
					sha256,
					compared: true,
					warningsRead: false,
				})
			).message,
		).toMatch(/Version 2/)
		const newest = (
			await app.ask('outbox.resend', { itemId: paper, version: 'newest', reason: 'amended' })
		).itemId
		expect(await item(app, newest)).toMatchObject({
			version: 2,
			state: 'to-check',
			resend: { of: paper, reason: 'amended' },
		})
		const same = (
			await app.ask('outbox.resend', { itemId: paper, version: 'same', reason: 'lost in the post' })
		).itemId
		expect((await item(app, same)).sha256).toBe((await item(app, paper)).sha256)
		// what came back is settled by the one that goes out in its place; what did not come back stays
		// as it is
		expect((await item(app, paper)).state).toBe('sent')
		await app.ask('outbox.confirm', {
			itemId: paper,
			what: 'returned',
			note: 'not known at this address',
		})
		const third = await app.ask('outbox.resend', {
			itemId: paper,
			version: 'newest',
			reason: 'the address was asked',
		})
		expect(await item(app, paper)).toMatchObject({
			state: 'closed',
			history: expect.arrayContaining([
				expect.objectContaining({
					state: 'closed',
					says: expect.stringMatching(/^Sent again as LW-[0-9A-F]{8}: the address was asked$/),
				}),
			]),
		})
		expect((await item(app, third.itemId)).resend.of).toBe(paper)

		expect(
			(
				await app.refused('outbox.sentInError', {
					itemId: newest,
					what: 'wrong person',
					noticedAt: '2027-01-20T08:00:00.000Z',
				})
			).message,
		).toMatch(/did not leave/)
		const { breachId } = await app.ask('outbox.sentInError', {
			itemId: paper,
			what: 'wrong person',
			noticedAt: '2027-01-20T08:00:00.000Z',
		})
		await app.ask('breaches.step', {
			breachId,
			step: 'contain',
			note: 'the envelope came back unopened',
		})
		const { breaches } = await app.ask('breaches.list')
		expect(breaches[0]).toMatchObject({
			recipient: expect.stringContaining('Owain Trescott'),
			assessDaysLeft: 29,
			authorityHoursLeft: 70,
			assessBy: '2027-02-19T08:00:00.000Z',
			done: { contain: { note: 'the envelope came back unopened' } },
			access: expect.arrayContaining(['A. Example: print']),
		})
	},
)
test(
	'the mail password is sealed, never shown, and never follows to another server; students ' +
		'stay out',
	async () => {
		const { app, here, wire } = await bench()
		const { smtp, clock } = await app.ask('mail.get')
		expect(smtp).toMatchObject({ hasPassword: true })
		expect(JSON.stringify(smtp)).not.toContain('right words')
		const { hasPassword: _, ...kept } = smtp
		await app.ask('mail.save', { smtp: kept, clock })
		expect((await app.ask('mail.test')).says).toMatch(/took a test message/)
		expect(
			(await app.refused('mail.save', { smtp: { ...kept, host: 'other.example' }, clock }))
				.problems?.[0]?.path,
		).toBe('smtp.password')
		expect(
			(await app.refused('mail.save', { smtp: { ...kept, inSoManyWords: 'ok' }, clock }))
				.problems?.[0]?.path,
		).toBe('smtp.inSoManyWords')
		wire.cut = 'EHLO'
		expect((await app.refused('mail.test')).message).toMatch(/Nothing was sent/)
		const { readdirSync, readFileSync } = await import('node:fs')
		for (const name of readdirSync(here))
			expect(readFileSync(`${here}/${name}`).includes('right words'), name).toBe(false)
		await app.ask('people.save', {
			name: 'Invented student',
			registration: '',
			role: 'student',
			passphrase: 'student words',
		})
		await app.ask('session.lock')
		await app.ask('session.unlock', { passphrase: 'student words' })
		expect((await app.refused('outbox.list')).message).toMatch(/^This is for /)
	},
)
test('the copy that leaves opens by the password only, and shows the signed pages', async () => {
	const smtp = await startSmtp()
	stops.push(smtp.stop)
	const clock = { ms: Date.parse('2027-01-20T09:00:00.000Z') }
	const app = createApp({
		dataFolder: folder(),
		scryptCost: 1024,
		now: () => new Date(clock.ms),
		renderPdf,
	})
	stops.push(() => app.close())
	// biome-ignore lint/suspicious/noExplicitAny: answers are looked at field by field
	const ask = async (name: string, input: unknown = {}): Promise<any> => {
		const answer = await app.call(name, input)
		if (!answer.ok) throw new Error(`${name}: ${answer.message} ${JSON.stringify(answer.problems)}`)
		return answer.value
	}
	const driven = {
		...app,
		ask,
		refused: async () => {
			throw new Error('not used')
		},
		clock,
	} as unknown as Opened
	await ask('session.setUp', { clinic, passphrase })
	await ask('mail.save', {
		smtp: {
			host: '127.0.0.1',
			port: smtp.port,
			security: 'none',
			inSoManyWords: plainWords,
			from: { name: 'Invented Clinic', email: 'desk@clinic.example' },
		},
		clock: { assessWithinDays: 30, authorityWithinHours: 72 },
	})
	const { playerId } = await ask('players.save', { player: adult })
	await signed(
		driven,
		playerId,
		{ feet: { left: { heelToToeMm: [270] }, right: { heelToToeMm: [271] } } } as never,
		'2026-07-20',
	)
	clock.ms += 60_000
	const visitId = await signed(driven, playerId, {
		feet: { left: { heelToToeMm: [270] }, right: { heelToToeMm: [272] } },
	} as never)
	await ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const itemId = await put(driven, visitId)
	await release(driven, itemId)
	await settle(driven)
	const { text } = smtp.received[0] ?? { text: '' }
	const base64 =
		/Content-Transfer-Encoding: base64\r\n(?:[^\r\n]+\r\n)*\r\n([A-Za-z0-9+/=\r\n]+)/.exec(
			text.slice(text.indexOf('application/pdf')),
		)?.[1] ?? ''
	const bytes = () => new Uint8Array(Buffer.from(base64, 'base64'))
	await expect(getDocument({ data: bytes() }).promise).rejects.toThrow(/password/i)
	const { password } = await ask('outbox.password', { itemId })
	expect(text).not.toContain(password)
	const opened = await getDocument({ data: bytes(), password }).promise
	const page = (await (await opened.getPage(1)).getTextContent()).items
		.map((one) => ('str' in one ? one.str : ''))
		.join(' ')
	expect(page).toContain('Owain Trescott')
})
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
				consentNoted: true,
				warningSigns: ['Do not lend boots to Zoe Nguyen-Hart again'],
			},
		},
	})
	await app.ask('visits.sign', { draftId })
	expect((await app.ask('outbox.look', { itemId: await put(app, visitId) })).warnings).toEqual([
		expect.stringMatching(/names Zoë Nguyễn-Hart, another player on record/),
	])
})
test('a transmission sheet names number, recipient, day, people and digest, and nothing clinical', async () => {
	const { app, playerId, visitId } = await bench()
	const itemId = await put(app, visitId, { channel: 'hand-over' })
	expect((await app.refused('outbox.sheet', { itemId })).message).toMatch(/not checked yet/)
	await release(app, itemId)
	expect((await app.ask('outbox.sheet', { itemId })).base64).not.toBe('')
	expect((await app.ask('audit.page', { limit: 1, function: 'print' })).rows[0]).toMatchObject({
		objectRef: expect.stringMatching(/^sheet:LW-/),
		playerId,
	})
	expect((await app.ask('audit.verify')).problems).toEqual([])
	const one = await item(app, itemId)
	for (const channel of ['smtp', 'eml', 'print', 'hand-over'] as const) {
		const sheet = transmissionSheet({
			item: { ...one, channel, sentAt: '2027-01-20T10:00:00.000Z', consentIds: ['abcdef12-0000'] },
			clinic: clinic as Clinic,
			by: 'A. Example',
			at: '2027-01-21T09:30:00.000Z',
			pages: 3,
		})
		const words = textsIn({ ...sheet, letterhead: null, kind: null })
		// the address and the names of people and clinic stand as they are
		for (const text of words.filter((one) => !one.includes('@')))
			expect(clinicalWord(text), text).toBeUndefined()
		for (const want of ['Owain Trescott', '20 January 2027', 'A. Example', one.number, '3 pages'])
			expect(words.join('\n')).toContain(want)
		expect(words.join('').replaceAll(' ', '')).toContain(one.sha256)
		expect(words.join()).not.toMatch(/1994-03-30|1994/)
		expect(
			Buffer.from(await renderPdf(sheet))
				.subarray(0, 5)
				.toString(),
		).toBe('%PDF-')
	}
})
test('who must be told of a newer version stands on the player, until they were sent it', async () => {
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
		content: { ...draft.content, decisions: { ...draft.content.decisions, consentNoted: true } },
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
})
