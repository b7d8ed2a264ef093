/**
 * Mail through a real SMTP server on loopback, read at the other end by programs that are not ours:
 * Python's email package and qpdf.
 */
import { execFileSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { clinic, passphrase, pdf } from './bench-app.ts'
import { certificate, startSmtp } from './mail-bench.ts'
import { isInstalled, readByPython } from './other-programs.ts'
import {
	adult,
	bench,
	consent,
	item,
	mailed,
	put,
	release,
	sendings,
	settle,
	stops,
} from './outbox-bench.ts'

const python = isInstalled('python3')
const qpdf = isInstalled('qpdf')
const needPython = (skip: (why: string) => void) => {
	if (!python) skip('python3 is not installed: nothing but our own code would read the message')
}
const longName =
	`Füße, Gelenke & “Łasty” am Größenweg – ${'Praxis für Sport und Schuh '.repeat(2)}`.trim()
const player = { ...adult, givenName: 'Zoë Łucja', familyName: 'Marlowe-Nguyễn' }
const name = 'Zoë Łucja Marlowe-Nguyễn'
const email = consent('email', name)
const sha256 = (bytes: Uint8Array) => createHash('sha256').update(bytes).digest('hex')
const bytesOf = (hex: string | undefined) => Buffer.from(hex ?? '', 'hex')
const settings = (port: number, change: object = {}) => ({
	smtp: {
		host: '127.0.0.1',
		port,
		security: 'none',
		inSoManyWords: plainWords,
		user: 'desk',
		password: 'right words',
		from: { name: 'Desk, "Front" Größe', email: 'desk@clinic.example' },
		...change,
	},
	clock: { assessWithinDays: 30, authorityWithinHours: 72 },
})

let here = ''
beforeAll(() => {
	here = mkdtempSync(join(tmpdir(), 'lastwright-mail-'))
})
afterAll(() => rmSync(here, { recursive: true, force: true }))
const kept = (bytes: Uint8Array): string => {
	const file = join(here, `${sha256(bytes).slice(0, 12)}.pdf`)
	writeFileSync(file, bytes)
	return file
}
async function ready() {
	const made = await bench(player)
	const { app, playerId, wire } = made
	await app.ask('clinic.save', { ...clinic, name: longName, email: 'desk@clinic.example' })
	await app.ask('mail.save', settings(wire.port))
	await app.ask('consents.record', { playerId, consent: email })
	const send = async (change: object = {}) => {
		const itemId = await put(app, made.visitId, change)
		await release(app, itemId)
		await settle(app)
		return itemId
	}
	return { ...made, send }
}

describe('what arrived', () => {
	it('is one message to one person, its names and its long subject whole, by Python', async ({
		skip,
	}) => {
		needPython(skip)
		const { app, smtp, send } = await ready()
		const itemId = await send({ protection: 'open' })
		const { number, sha256: stored, messageId } = await item(app, itemId)
		expect(smtp.received).toHaveLength(1)
		const read = readByPython(smtp.received[0]?.bytes ?? new Uint8Array())
		expect(read).toMatchObject({
			from: [{ name: 'Desk, "Front" Größe', address: 'desk@clinic.example' }],
			to: [{ name, address: 'owain@player.example' }],
			others: [],
			subject: `Document ${number} from ${longName}`,
			messageId,
			date: '2027-01-20T09:00:00+00:00',
			type: 'multipart/mixed',
			parts: ['multipart/mixed', 'text/plain', 'application/pdf'],
			attachments: [
				{
					name: `document-${number}.pdf`,
					type: 'application/pdf',
					disposition: 'attachment',
					// the bytes that were signed, and no others
					sha256: stored,
				},
			],
			defects: [],
		})
		expect(read.body).toMatch(new RegExp(`^Dear ${name},\\r?\\n\\r?\\nthe attached document`))
		expect(read.body).not.toMatch(/password/)
		const lines = smtp.received[0]?.text.split('\r\n') ?? []
		expect(lines.every((line) => line.length <= 998 && !line.includes('\n'))).toBe(true)
	})
	it('opens by the password that is told another way, and holds the stored page, by qpdf', async ({
		skip,
	}) => {
		needPython(skip)
		if (!qpdf) skip('qpdf is not installed: nothing but our own code would open the attachment')
		const { app, smtp, send } = await ready()
		const itemId = await send()
		const { number } = await item(app, itemId)
		const { password } = await app.ask('outbox.password', { itemId })
		const read = readByPython(smtp.received[0]?.bytes ?? new Uint8Array())
		expect(read.attachments.map((one) => one.name)).toEqual([`document-${number}.pdf`])
		expect(read.body).toContain('opens with a password')
		expect(JSON.stringify([read.subject, read.body])).not.toContain(password)
		const file = kept(bytesOf(read.files[0]))
		expect(() => execFileSync('qpdf', ['--check', file], { stdio: 'pipe' })).toThrow(/password/)
		expect(() =>
			execFileSync('qpdf', ['--password=another', '--check', file], { stdio: 'pipe' }),
		).toThrow(/password/)
		const checked = execFileSync('qpdf', [`--password=${password}`, '--check', file], {
			encoding: 'utf8',
		})
		expect(checked).toMatch(/No syntax or stream encoding errors found/)
		const count = (from: string, ...words: string[]) =>
			execFileSync('qpdf', [...words, '--show-npages', from], { encoding: 'utf8' }).trim()
		expect(count(file, `--password=${password}`)).toBe(count(kept(pdf)))
	})
	it('is the same message after greylisting, and after the answer to it was lost', async ({
		skip,
	}) => {
		needPython(skip)
		const { app, smtp, wire, send } = await ready()
		smtp.answers.rcpt = [450, '4.7.1 greylisted, come back later']
		const grey = await send()
		expect(await item(app, grey)).toMatchObject({ state: 'ready' })
		const { notBefore, history, messageId } = await item(app, grey)
		expect(history.at(-1).says).toMatch(/asked to try later.*greylisted/)
		smtp.answers.rcpt = undefined
		await app.ask('outbox.list')
		expect(smtp.received).toHaveLength(0)
		app.clock.ms = Date.parse(notBefore) + 1
		await app.ask('session.unlock', { passphrase })
		await settle(app)
		expect((await item(app, grey)).state).toBe('sent')
		wire.cut = 'answer'
		const lost = await send()
		wire.cut = undefined
		await settle(app)
		expect((await item(app, lost)).state).toBe('uncertain')
		// it came, whole, and once: only a person who asked can know
		const read = smtp.received.map(({ bytes }) => readByPython(bytes))
		expect(read.map((one) => one.messageId)).toEqual([messageId, (await item(app, lost)).messageId])
		expect(read.flatMap((one) => one.defects)).toEqual([])
		expect(read.every((one) => one.attachments.length === 1)).toBe(true)
	})
})

describe('what the server says', () => {
	it('of two recipients one is refused: the other one gets it, and nobody else does', async () => {
		const { app, smtp, playerId, visitId } = await ready()
		const { contactId } = await app.ask('outbox.addContact', {
			playerId,
			name: 'Dr Åsa Öberg',
			role: 'doctor',
			email: 'asa@doctor.example',
			emailAgain: 'asa@doctor.example',
			warningsRead: true,
		})
		for (const purpose of ['email', 'share-with-care'])
			await app.ask('consents.record', {
				playerId,
				consent: consent(purpose, 'Dr Åsa Öberg', name),
			})
		smtp.answers.refusing = { 'asa@doctor.example': [550, '5.1.1 no such mailbox'] }
		const doctor = await put(app, visitId, { kind: 'referral', recipientId: contactId })
		const own = await put(app, visitId)
		for (const itemId of [doctor, own]) await release(app, itemId)
		await settle(app)
		expect(smtp.received.map(({ to }) => to)).toEqual([['owain@player.example']])
		expect(await item(app, doctor)).toMatchObject({ state: 'returned', statusCode: '5.1.1' })
		expect((await item(app, own)).state).toBe('sent')
		expect(await sendings(app, visitId)).toMatchObject([{ recipient: name }])
	})
	it('a login that is refused and a certificate that is not known halt the queue until they are mended', async () => {
		const { app, smtp, wire, send } = await ready()
		await app.ask('mail.save', settings(wire.port, { password: 'wrong words' }))
		const itemId = await send()
		const says = async () => (await app.ask('outbox.list')).queue.says
		expect(await says()).toMatch(/refused the login.*Check user and password/)
		expect(await item(app, itemId)).toMatchObject({ state: 'ready', attempts: 0 })
		const tries = wire.conversations
		app.clock.ms += 86_400_000
		await app.ask('session.unlock', { passphrase })
		await app.ask('outbox.list')
		expect(wire.conversations).toBe(tries)
		await app.ask('mail.save', settings(wire.port, { security: 'starttls' }))
		await settle(app)
		expect(await says()).toMatch(/certificate that nobody vouches for.*Nothing was sent/)
		expect(smtp.received).toHaveLength(0)
		await app.ask('mail.save', settings(wire.port, { security: 'starttls', certificate }))
		await settle(app)
		expect(smtp.received).toMatchObject([{ secure: true, user: 'desk' }])
		expect((await item(app, itemId)).state).toBe('sent')
	})
	it('too big: said before it is sent where the server tells its limit, and nothing against the address', async () => {
		const small = await startSmtp({ size: 600 })
		stops.push(small.stop)
		const { app, playerId, visitId } = await mailed(small.port, undefined, player)
		await app.ask('consents.record', { playerId, consent: email })
		const try1 = async () => {
			const itemId = await put(app, visitId)
			await release(app, itemId)
			await settle(app)
			return item(app, itemId)
		}
		const first = await try1()
		expect(first).toMatchObject({ state: 'returned' })
		expect(first.history.at(-1).says).toMatch(/it is too big\. Print it, or hand it over\./)
		expect(small.received).toHaveLength(0)

		// where it does not tell: by its answer to the sender, or after it read the whole
		const { smtp, wire } = await bench(player)
		await app.ask('mail.save', settings(wire.port))
		for (const stage of ['mail', 'data'] as const) {
			smtp.answers[stage] = [552, '5.3.4 message too big for system']
			const answered = await try1()
			expect(answered.history.at(-1).says).toMatch(/too big.*552 5\.3\.4/)
			expect(answered.statusCode).toBeUndefined()
			smtp.answers[stage] = undefined
		}
		const { recipients } = await app.ask('outbox.recipients', { visitId })
		expect(JSON.stringify(recipients)).not.toMatch(/undeliverable/)
		expect((await try1()).state).toBe('sent')
	})
})
