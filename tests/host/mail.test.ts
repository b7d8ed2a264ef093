/**
 * The mail transport against a real server: what is known after each fault, and the bytes of a
 * message.
 */
import { afterEach, expect, test } from 'vitest'
import { composeDraft, composeMessage } from '../../electron/mail/compose.ts'
import { type Job, sendBySmtp, type Times } from '../../electron/mail/send.ts'
import type { Smtp as Settings } from '../../shared/desk/outbox/mail-settings.ts'
import { plainWords } from '../../shared/desk/outbox/mail-settings.ts'
import { type Cut, certificate, startSmtp, startWire } from './mail-bench.ts'

const stops: (() => Promise<void>)[] = []
afterEach(async () => {
	for (const stop of stops.splice(0).reverse()) await stop()
})
const times: Times = { connectMs: 2000, greetMs: 2000, answerMs: 2000 }
const from = { name: 'Invented Clinic', email: 'desk@clinic.example' }
const plain = (port: number): Settings => ({
	host: '127.0.0.1',
	port,
	security: 'none',
	inSoManyWords: plainWords,
	user: 'desk',
	password: 'right words',
	from,
})
const message = () =>
	composeMessage({
		from,
		to: { name: 'Zoë Marlowe', email: 'zoe@player.example' },
		subject: 'Document LW-00000001 from Invented Clinic',
		body: 'Dear Zoë,\n.\nend',
		messageId: '<1@clinic.example>',
		date: new Date('2027-01-20T09:00:00Z'),
		attachment: { fileName: 'document-LW-00000001.pdf', bytes: Buffer.from('%PDF') },
	})
async function job(change: Partial<Job> = {}): Promise<Job> {
	return {
		from: from.email,
		to: 'zoe@player.example',
		message: await message(),
		envelopeId: 'item-1',
		beforeEnd: () => {},
		...change,
	}
}
async function bench(options: Parameters<typeof startSmtp>[0] = {}) {
	const smtp = await startSmtp(options)
	stops.push(smtp.stop)
	const wire = await startWire(smtp.port)
	stops.push(wire.stop)
	return { smtp, wire }
}

test.each<[Cut, 'network' | 'uncertain', number]>([
	['connect', 'network', 0],
	['EHLO', 'network', 0],
	['AUTH', 'network', 0],
	['MAIL', 'network', 0],
	['RCPT', 'network', 0],
	['DATA', 'network', 0],
	['message', 'uncertain', 0],
	['answer', 'uncertain', 1],
])('the wire is cut at %s: %s, %i at the server', async (cut, kind, arrived) => {
	const { smtp, wire } = await bench()
	wire.cut = cut
	let ends = 0
	const outcome = await sendBySmtp(
		plain(wire.port),
		await job({
			beforeEnd: () => {
				ends++
			},
		}),
		times,
	)
	expect(outcome.kind, JSON.stringify(outcome)).toBe(kind)
	expect(smtp.received).toHaveLength(arrived)
	expect(ends).toBe(kind === 'uncertain' ? 1 : 0)
	wire.cut = undefined
	expect((await sendBySmtp(plain(wire.port), await job(), times)).kind).toBe('accepted')
	expect(smtp.received).toHaveLength(arrived + 1)
})
test('no server at all is the network, and so is a server that says nothing', async () => {
	const { smtp } = await bench()
	await smtp.stop()
	stops.shift()
	expect(await sendBySmtp(plain(smtp.port), await job(), times)).toMatchObject({
		kind: 'network',
		says: expect.stringMatching(/takes no connection at this port.* tried again by itself/),
	})
	const { createServer } = await import('node:net')
	const mute = createServer((socket) => {
		socket.on('error', () => {})
	})
	await new Promise<void>((resolve) => {
		mute.listen(0, '127.0.0.1', resolve)
	})
	stops.push(() => new Promise((resolve) => mute.close(() => resolve())))
	expect(
		(
			await sendBySmtp(plain((mute.address() as { port: number }).port), await job(), {
				...times,
				greetMs: 300,
			})
		).kind,
	).toBe('network')
})
test.each<['auth' | 'mail' | 'rcpt' | 'data', number, string]>([
	['auth', 535, 'settings'],
	['mail', 550, 'settings'],
	['mail', 451, 'later'],
	['rcpt', 550, 'refused'],
	['rcpt', 450, 'later'],
	['data', 554, 'refused'],
	['data', 451, 'later'],
	['data', 421, 'network'],
])('the server answers %s with %i: %s, and nothing arrives', async (stage, code, kind) => {
	const { smtp, wire } = await bench()
	if (stage === 'auth') smtp.answers.auth = false
	else smtp.answers[stage] = [code, '5.1.1 no such mailbox']
	const outcome = await sendBySmtp(plain(wire.port), await job(), times)
	expect(outcome.kind, JSON.stringify(outcome)).toBe(kind)
	if (outcome.kind === 'refused') expect(outcome.status).toBe('5.1.1')
	expect(smtp.received).toHaveLength(0)
})
test(
	'TLS is required: a server without it gets neither login nor message; a foreign ' +
		'certificate is refused',
	async () => {
		const bare = await bench({ hideSTARTTLS: true, disabledCommands: ['STARTTLS'] })
		expect(
			(await sendBySmtp({ ...plain(bare.wire.port), security: 'starttls' }, await job(), times))
				.kind,
		).toBe('network')
		const { smtp } = await bench()
		const unknown = await sendBySmtp(
			{ ...plain(smtp.port), security: 'starttls' },
			await job(),
			times,
		)
		// said to a practice, not to a programmer; and nothing that mends by itself
		expect(unknown).toMatchObject({
			kind: 'settings',
			says: expect.stringMatching(/certificate that nobody vouches for/),
		})
		expect(JSON.stringify(unknown)).not.toMatch(/Node|--use|OpenSSL|SSL routines/i)
		expect(smtp.received).toHaveLength(0)
		expect(
			(
				await sendBySmtp(
					{ ...plain(smtp.port), security: 'starttls', certificate },
					await job(),
					times,
				)
			).kind,
		).toBe('accepted')
		expect(smtp.received[0]).toMatchObject({
			secure: true,
			user: 'desk',
			to: ['zoe@player.example'],
		})
		const direct = await bench({ secure: true })
		expect(
			(
				await sendBySmtp(
					{ ...plain(direct.smtp.port), security: 'tls', certificate },
					await job(),
					times,
				)
			).kind,
		).toBe('accepted')
		expect(
			(await sendBySmtp({ ...plain(direct.smtp.port), security: 'tls' }, await job(), times)).kind,
		).toBe('settings')
		// the kind of security and the port do not fit
		expect(
			await sendBySmtp({ ...plain(smtp.port), security: 'tls' }, await job(), times),
		).toMatchObject({ kind: 'settings', says: expect.stringMatching(/Try the other one/) })
		expect(direct.smtp.received).toHaveLength(1)
	},
)
test('what beforeEnd throws keeps the message from being sent', async () => {
	const { smtp, wire } = await bench()
	const outcome = await sendBySmtp(
		plain(wire.port),
		await job({
			beforeEnd: () => {
				throw new Error('consent withdrawn')
			},
		}),
		times,
	)
	expect(outcome).toMatchObject({ kind: 'stopped' })
	expect(smtp.received).toHaveLength(0)
})
test(
	'the message: one recipient, encoded names, neutral file name, lone dots kept; the draft ' +
		'says unsent first',
	async () => {
		const { smtp, wire } = await bench()
		await sendBySmtp(plain(wire.port), await job(), times)
		const [{ text, to } = { text: '', to: [] }] = smtp.received
		expect(to).toEqual(['zoe@player.example'])
		expect(text).toMatch(/^To: =\?UTF-8\?[BQ]\?.*<zoe@player\.example>/m)
		expect(text).not.toMatch(/^(Cc|Bcc):/im)
		expect(text).toContain('filename=document-LW-00000001.pdf')
		expect(text).toContain('Message-ID: <1@clinic.example>')
		expect(text).toMatch(/\r\n\.\r\nend/)
		const draft = Buffer.from(
			await composeDraft({
				from,
				to: { name: 'Rae', email: 'rae@guardian.example' },
				subject: 'Document LW-1 from Invented Clinic',
				body: 'Dear Rae',
				messageId: '<2@clinic.example>',
				date: new Date(0),
			}),
		).toString('utf8')
		expect(draft.startsWith('X-Unsent: 1\r\n')).toBe(true)
		expect(draft.split('\r\n').every((line) => !line.includes('\n') && line.length <= 998)).toBe(
			true,
		)
		await expect(
			composeMessage({
				from,
				to: from,
				subject: 's',
				body: 'b',
				messageId: '<3@x>',
				date: new Date(0),
				attachment: { fileName: 'ankle-report.pdf', bytes: Buffer.from('') },
			}),
		).rejects.toThrow(/ankle|report/)
		const injected = Buffer.from(
			await composeMessage({
				from,
				to: { name: 'A\r\nBcc: thief@bad.example', email: 'a@b.example' },
				subject: 'x\r\nBcc: thief@bad.example',
				body: 'b',
				messageId: '<4@x>',
				date: new Date(0),
			}),
		).toString('utf8')
		expect(injected).not.toMatch(/^Bcc:/im)
	},
)
