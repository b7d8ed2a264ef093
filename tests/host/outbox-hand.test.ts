/** What leaves by hand, what follows an error, and the password of mail and of copies. */
import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { expect, test } from 'vitest'
import { createApp } from '../../electron/app.ts'
import { renderPdf } from '../../electron/pdf/render.ts'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { agreed } from '../agreed.ts'
import { clinic, folder, type Opened, passphrase, signed } from './bench-app.ts'
import { startSmtp } from './mail-bench.ts'
import {
	adult,
	bench,
	consent,
	item,
	put,
	release,
	sendings,
	settle,
	stops,
} from './outbox-bench.ts'

test(
	'draft, print and hand-over leave only when given out and ticked; a newer version is ' +
		'offered; sent in error opens the steps',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const draft = await put(app, visitId, { channel: 'eml' })
		expect((await app.refused('outbox.take', { itemId: draft })).code).toBe('outbox.not-ready')
		await release(app, draft)
		expect(
			(await app.refused('outbox.confirm', { itemId: draft, what: 'sent', note: '' })).code,
		).toBe('outbox.not-given-out')
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
		expect(
			(await sendings(app, visitId)).map((sending: { channel: string }) => sending.channel),
		).toEqual(['send', 'print'])
		expect(smtp.received).toHaveLength(0)

		const waiting = await put(app, visitId, { channel: 'hand-over' })
		const { draftId } = await app.ask('visits.amend', { visitId, reason: 'a typing error' })
		const { draft: opened } = await app.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		await app.ask('drafts.save', {
			draftId,
			content: {
				...opened.content,
				decisions: { ...opened.content.decisions, ...agreed },
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
			).code,
		).toBe('outbox.newer-version')
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
			).code,
		).toBe('outbox.not-left-yet')
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
			// each person once, with everything they did
			access: [expect.stringMatching(/^A\. Example: .*\bprint\b/)],
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
		expect((await app.refused('mail.test')).code).toBe('outbox.test-failed')
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
		expect((await app.refused('outbox.list')).code).toBe('call.not-for-this-role')
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

test('a page for a screen reader leaves as the PDF does: released, with its consents, never by mail', async () => {
	const { app, visitId, playerId } = await bench()
	await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
	const byHand = await put(app, visitId, { channel: 'hand-over' })
	const asPage = { itemId: byHand, asPage: true }
	expect((await app.refused('outbox.take', asPage)).code).toBe('outbox.not-ready')
	await release(app, byHand)
	const { base64, fileName, mediaType } = await app.ask('outbox.take', asPage)
	expect({ fileName, mediaType }).toEqual({
		fileName: expect.stringMatching(/^document-LW-[0-9A-F]{8}\.html$/),
		mediaType: 'text/html',
	})
	const html = Buffer.from(base64, 'base64').toString()
	const { html: report } = await app.ask('reports.page', { visitId })
	expect(html).toBe(report)
	const draft = await put(app, visitId, { channel: 'eml' })
	await release(app, draft)
	expect((await app.refused('outbox.take', { itemId: draft, asPage: true })).code).toBe(
		'outbox.no-page-by-mail',
	)
})
