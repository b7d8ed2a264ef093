/**
 * One message over SMTP, and what is known of it afterwards. Never guesses: after the last byte
 * left and no answer came, the outcome is uncertain.
 */
import { Readable } from 'node:stream'
import SMTPConnection from 'nodemailer/lib/smtp-connection'
import { isTooBig, tooBigWords } from '../../shared/desk/outbox/dsn.ts'
import type { Smtp } from '../../shared/desk/outbox/mail-settings.ts'
import { connectionFaults } from './connection-faults.table.ts'

export interface Job {
	from: string
	to: string
	message: Uint8Array
	envelopeId: string
	/**
	 * Runs after the server asked for the message and before its end is sent; what it throws stops
	 * the sending, and nothing was sent.
	 */
	beforeEnd: () => void
}
export type Outcome =
	| { kind: 'accepted'; says: string }
	/** no connection, or it broke before the message was out: nothing was sent */
	| { kind: 'network'; says: string }
	/** the server will not have us: settings or login */
	| { kind: 'settings'; says: string }
	/** this message not now (4xx), or never (5xx) */
	| { kind: 'later'; says: string }
	| { kind: 'refused'; says: string; status?: string }
	/** `beforeEnd` said no */
	| { kind: 'stopped'; error: Error }
	| { kind: 'uncertain'; says: string }
export interface Times {
	connectMs: number
	greetMs: number
	answerMs: number
}
/** Common practice, no source. The answer after the last byte may be slow at a busy server. */
const usualTimes: Times = { connectMs: 15_000, greetMs: 20_000, answerMs: 120_000 }
export type SendMail = (smtp: Smtp, job: Job) => Promise<Outcome>

interface Fault extends Error {
	code?: string
	/** what Node called it, where the connection gave it a name of its own */
	originalCode?: string
	command?: string
	responseCode?: number
	response?: string
}
const said = ({ response, message }: Fault) =>
	(response ?? message).replace(/\s+/g, ' ').trim().slice(0, 300)
const enhanced = (text: string) => /\b[245]\.\d{1,3}\.\d{1,3}\b/.exec(text)?.[0]
const stageWords: Record<string, string> = {
	CONN: 'connecting',
	EHLO: 'the greeting',
	HELO: 'the greeting',
	STARTTLS: 'securing the connection',
	'MAIL FROM': 'naming the sender',
	'RCPT TO': 'naming the recipient',
	DATA: 'handing over the message',
}
const stageOf = (command = '') =>
	stageWords[command] ?? (command.startsWith('AUTH') ? 'the login' : 'the conversation')

/**
 * The server's own limit, told before anything is sent (RFC 1870: 552 to MAIL FROM, or the limit in
 * its greeting), or after the message was read.
 */
const isOversized = ({ code, command, responseCode, response }: Fault): boolean =>
	(code === 'EMESSAGE' && command === 'MAIL FROM' && responseCode === undefined) ||
	(command === 'MAIL FROM' && responseCode === 552) ||
	isTooBig(enhanced(response ?? '') ?? '')

/** No status: it says nothing against the address. */
const tooBig = (words: string): Outcome => ({
	kind: 'refused',
	says: `The mail server will not take it, since ${tooBigWords} The server said: ${words}`,
})

function outcomeOf(fault: Fault, ended: boolean): Outcome {
	const { responseCode: code, command = '' } = fault
	const words = said(fault)
	if (ended && code === undefined)
		return {
			kind: 'uncertain',
			says:
				'The connection broke after the whole message had gone out and before the server ' +
				'answered. It may have arrived, or not.',
		}
	if (isOversized(fault)) return tooBig(words)
	const known = connectionFaults[fault.originalCode ?? fault.code ?? '']
	if (code === undefined && known) {
		const again = known.kind === 'network' ? ' Nothing was sent; it is tried again by itself.' : ''
		return { kind: known.kind, says: `${known.says}${again}` }
	}
	if (fault.code === 'EAUTH' && code !== undefined && code >= 500)
		return {
			kind: 'settings',
			says:
				`The mail server refused the login: ${words}. Check user and password in the mail ` +
				'settings.',
		}
	if (
		code === undefined ||
		command === 'CONN' ||
		fault.code === 'ETLS' ||
		fault.code === 'EAUTH' ||
		command === 'EHLO' ||
		command === 'HELO' ||
		code === 421
	)
		return {
			kind: 'network',
			says:
				`The mail server could not be reached or broke off during ${stageOf(command)}: ` +
				`${words}. Nothing was sent; it is tried again by itself.`,
		}
	if (code < 500)
		return {
			kind: 'later',
			says: `The server asked to try later, during ${stageOf(command)}: ${words}`,
		}
	if (command === 'MAIL FROM')
		return {
			kind: 'settings',
			says:
				`The mail server refused the sender's address: ${words}. Check the address in the ` +
				'mail settings.',
		}
	const status = enhanced(words)
	return {
		kind: 'refused',
		says: `The server refused it during ${stageOf(command)}: ${words}`,
		...(status ? { status } : {}),
	}
}
function open({ host, port, security, certificate }: Smtp, times: Times): SMTPConnection {
	return new SMTPConnection({
		host,
		port,
		secure: security === 'tls',
		requireTLS: security === 'starttls',
		ignoreTLS: security === 'none',
		// the PC's own name is nobody's business
		name: '[127.0.0.1]',
		connectionTimeout: times.connectMs,
		greetingTimeout: times.greetMs,
		dnsTimeout: times.connectMs,
		socketTimeout: times.answerMs,
		allowInternalNetworkInterfaces: true,
		tls: {
			minVersion: 'TLSv1.2',
			rejectUnauthorized: true,
			...(certificate ? { ca: certificate } : {}),
		},
	})
}
/** @returns what is known; rejects for nothing */
export function sendBySmtp(smtp: Smtp, job: Job, times: Times = usualTimes): Promise<Outcome> {
	return new Promise((resolve) => {
		const connection = open(smtp, times)
		let ended = false
		let stopped: Error | undefined
		let settled = false
		const finish = (outcome: Outcome) => {
			if (settled) return
			settled = true
			if (outcome.kind === 'accepted') connection.quit()
			else connection.close()
			resolve(outcome)
		}
		const failed = (fault: Fault) =>
			finish(stopped ? { kind: 'stopped', error: stopped } : outcomeOf(fault, ended))
		// the bytes are pulled, so the end is not prepared before the server asked for the message
		let given = false
		const message = new Readable({
			read() {
				if (!given) {
					given = true
					this.push(job.message)
					return
				}
				try {
					job.beforeEnd()
				} catch (error) {
					stopped = error as Error
					this.destroy(stopped)
					return
				}
				ended = true
				this.push(null)
			},
		})
		connection.on('error', (error) => failed(error as Fault))
		connection.once('end', () => failed(new Error('the server closed the connection')))
		const send = () =>
			connection.send(
				{
					from: job.from,
					to: [job.to],
					size: job.message.byteLength,
					dsn: { ret: 'HDRS', envid: job.envelopeId, notify: ['SUCCESS', 'FAILURE', 'DELAY'] },
				},
				message,
				(error, info) =>
					error ? failed(error as Fault) : finish({ kind: 'accepted', says: info?.response ?? '' }),
			)
		connection.connect((error) => {
			if (error) return failed(error as Fault)
			if (!smtp.user) return send()
			connection.login(
				{ user: smtp.user, credentials: { user: smtp.user, pass: smtp.password ?? '' } },
				(refusal) => (refusal ? failed(refusal as Fault) : send()),
			)
		})
	})
}
