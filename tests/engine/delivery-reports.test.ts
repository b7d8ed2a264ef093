/** Reports of the mail system on what became of a message. */
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { reportParts } from '../../electron/mail/report-parts.ts'
import { failureInWords, meaningOf, readDsn } from '../../shared/desk/outbox/dsn.ts'

const report = (action: string, status: string) =>
	[
		'From: mailer@relay.example',
		'Subject: Undelivered',
		'MIME-Version: 1.0',
		'Content-Type: multipart/report; report-type=delivery-status;',
		'\tboundary="b/1=2"',
		'',
		'--b/1=2',
		'Content-Type: text/plain',
		'',
		'Final words.',
		'',
		'--b/1=2',
		'Content-Type: message/delivery-status',
		'',
		'Reporting-MTA: dns; relay.example',
		'Original-Envelope-Id: item-7',
		'',
		'Final-Recipient: rfc822; Zoe@Player.example',
		`Action: ${action}`,
		`Status: ${status} (words)`,
		'Diagnostic-Code: smtp; 550 5.1.1 <zoe@player.example>:',
		'  user unknown',
		'',
		'--b/1=2',
		'Content-Type: text/rfc822-headers',
		'',
		'Subject: Document',
		'Message-ID: <item-7@clinic.example>',
		'',
		'--b/1=2--',
		'',
	].join('\r\n')
const read = async (text: string) => readDsn(await reportParts(text))
test('a delivery report is read whole, with its status part alone, or refused in words', async () => {
	expect(await read(report('failed', '5.1.1'))).toEqual({
		ok: true,
		value: {
			envelopeId: 'item-7',
			messageId: '<item-7@clinic.example>',
			recipients: [
				{
					address: 'zoe@player.example',
					action: 'failed',
					status: '5.1.1',
					diagnostic: '550 5.1.1 <zoe@player.example>: user unknown',
				},
			],
		},
	})
	expect(
		await read('Final-Recipient: rfc822; a@b.example\nAction: delivered\nStatus: 2.0.0\n'),
	).toEqual({
		ok: true,
		value: { recipients: [{ address: 'a@b.example', action: 'delivered', status: '2.0.0' }] },
	})
	expect(await read('Hello')).toMatchObject({
		ok: false,
		message: expect.stringMatching(/not a delivery report/),
	})
	expect(await read(report('lost', '5.1.1'))).toMatchObject({
		ok: false,
		message: expect.stringMatching(/Action of .*given "lost"/),
	})
	expect(await read(report('failed', 'bad'))).toMatchObject({
		ok: false,
		message: expect.stringMatching(/Status of/),
	})
	await fc.assert(
		fc.asyncProperty(fc.nat(report('failed', '5.1.1').length), async (cut) => {
			const answer = await read(report('failed', '5.1.1').slice(0, cut))
			if (answer.ok) expect(answer.value.recipients[0]?.status).toMatch(/^5\.1\.1?$/)
		}),
	)
	await fc.assert(
		fc.asyncProperty(fc.string({ maxLength: 300 }), async (text) => {
			await read(text)
		}),
	)
})
test.each([
	['quoted-printable', (part: string) => part.replaceAll('=', '=3D').replaceAll(';', '=3B')],
	['base64', (part: string) => btoa(part).replace(/.{70}/g, '$&\r\n')],
	['8bit', (part: string) => part],
])('a report in %s says the same', async (encoding, encoded) => {
	const plain = report('failed', '5.1.1')
	const from = plain.indexOf('Reporting-MTA')
	const until = plain.indexOf('\r\n--b/1=2\r\nContent-Type: text/rfc822-headers')
	const written =
		plain.slice(0, from).replace(/\r\n$/, `Content-Transfer-Encoding: ${encoding}\r\n\r\n`) +
		encoded(plain.slice(from, until)) +
		plain.slice(until)
	expect(await read(written)).toEqual(await read(plain))
	expect((await read(written)).ok).toBe(true)
})
test('a refusal in words alone is about the one address that it names', () => {
	const mailed = ['rae@example.org', 'zoe@player.example', 'rae@example.org']
	const words = 'Your message to <Rae@example.org> could not be delivered. 550 5.1.1 unknown'
	expect(failureInWords(words, mailed)).toEqual({
		...{ address: 'rae@example.org', action: 'failed', status: '5.1.1' },
	})
	expect(failureInWords(words.replace('5.1.1 ', ''), mailed)?.status).toBe('5.0.0')
	for (const text of [
		...[words.replace('Rae@', 'grae@'), `${words} and zoe@player.example`, words.slice(0, 50), ''],
	])
		expect(failureInWords(text, mailed), text).toBeUndefined()
})
test('what a report means: only a lasting refusal marks the address', () => {
	expect(meaningOf({ address: 'a', action: 'failed', status: '5.1.1' })).toMatchObject({
		state: 'returned',
		badAddress: true,
	})
	expect(meaningOf({ address: 'a', action: 'failed', status: '4.4.7' })).toMatchObject({
		state: 'returned',
		badAddress: false,
	})
	expect(meaningOf({ address: 'a', action: 'delayed', status: '4.4.1' })).toMatchObject({
		state: 'sent',
		badAddress: false,
	})
	expect(meaningOf({ address: 'a', action: 'delivered', status: '2.0.0' })).toMatchObject({
		state: 'delivered',
	})
})
