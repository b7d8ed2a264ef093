/** A real SMTP server on 127.0.0.1, and a wire before it that can be cut at a chosen moment. */
import { readFileSync } from 'node:fs'
import { type AddressInfo, connect, createServer, type Server, type Socket } from 'node:net'
import { SMTPServer, type SMTPServerOptions } from 'smtp-server'

export const certificate = readFileSync(
	new URL('./fixtures/mail/cert.pem', import.meta.url),
	'utf8',
)
const key = readFileSync(new URL('./fixtures/mail/key.pem', import.meta.url), 'utf8')
export interface Received {
	from: string
	to: string[]
	text: string
	/** the message as it came */
	bytes: Buffer
	secure: boolean
	user: string | undefined
}
const said = (code: number, text: string) => Object.assign(new Error(text), { responseCode: code })
/** What the server answers instead of yes, by stage. */
export interface Answers {
	auth?: boolean
	mail?: [number, string]
	rcpt?: [number, string]
	data?: [number, string]
	/** what is answered to the naming of these addresses alone */
	refusing?: Readonly<Record<string, [number, string]>>
}
export async function startSmtp(options: SMTPServerOptions = {}) {
	const received: Received[] = []
	const answers: Answers = {}
	const server = new SMTPServer({
		key,
		cert: certificate,
		authOptional: true,
		allowInsecureAuth: true,
		disableReverseLookup: true,
		logger: false,
		closeTimeout: 100,
		onAuth: (auth, _, done) =>
			answers.auth === false || auth.username !== 'desk' || auth.password !== 'right words'
				? done(said(535, '5.7.8 authentication failed'))
				: done(null, { user: auth.username }),
		onMailFrom: (_, __, done) => done(answers.mail ? said(...answers.mail) : null),
		onRcptTo: ({ address }, _, done) => {
			const answer = answers.refusing?.[address] ?? answers.rcpt
			done(answer ? said(...answer) : null)
		},
		onData: (stream, session, done) => {
			const parts: Buffer[] = []
			stream.on('data', (part: Buffer) => parts.push(part))
			stream.on('end', () => {
				if (answers.data) return done(said(...answers.data))
				if (stream.sizeExceeded) return done(said(552, '5.3.4 message too big for system'))
				const { mailFrom, rcptTo } = session.envelope
				received.push({
					from: mailFrom ? mailFrom.address : '',
					to: rcptTo.map((recipient) => recipient.address),
					text: Buffer.concat(parts).toString('utf8'),
					bytes: Buffer.concat(parts),
					secure: session.secure,
					user: session.user as string | undefined,
				})
				done()
			})
		},
		...options,
	})
	server.on('error', () => {})
	await new Promise<void>((resolve) => {
		server.listen(0, '127.0.0.1', () => resolve())
	})
	const { port } = server.server.address() as AddressInfo
	return {
		port,
		received,
		answers,
		stop: () => new Promise<void>((resolve) => server.close(() => resolve())),
	}
}
export type Smtp = Awaited<ReturnType<typeof startSmtp>>

/**
 * The moments at which the wire can be cut. 'message' swallows the whole message; 'answer' lets it
 * through and swallows the answer.
 */
export const cuts = [
	'connect',
	'EHLO',
	'AUTH',
	'MAIL',
	'RCPT',
	'DATA',
	'message',
	'answer',
] as const
export type Cut = (typeof cuts)[number]
interface Wire {
	cut: Cut | undefined
	conversations: number
}
/** Two ends that end together. @returns what ends both */
function tied(client: Socket, upstream: Socket, open: Set<Socket>): () => void {
	const both = [client, upstream]
	const end = () => {
		for (const socket of both) socket.destroy()
	}
	for (const socket of both) {
		open.add(socket)
		socket.on('error', () => {})
		socket.on('close', () => {
			open.delete(socket)
			end()
		})
	}
	return end
}
/** Hands on what is said in both directions, up to where the wire is cut. */
function carry(wire: Wire, client: Socket, upstream: Socket, end: () => void): void {
	let inMessage = false
	let ended = false
	// the end of the message may come in two pieces
	let tail = ''
	client.on('data', (bytes) => {
		const text = bytes.toString('latin1')
		if (!inMessage) {
			const cutAt = cutIn(text, wire.cut)
			if (cutAt >= 0) {
				upstream.write(bytes.subarray(0, cutAt))
				return end()
			}
			inMessage = /^DATA/im.test(text)
		} else {
			if (wire.cut === 'message') return end()
			tail = (tail + text).slice(-5)
			if (tail === '\r\n.\r\n') ended = true
		}
		upstream.write(bytes)
	})
	upstream.on('data', (bytes) => (ended && wire.cut === 'answer' ? end() : client.write(bytes)))
}
/**
 * Where a command at which the wire is cut begins; below 0 where there is none. Commands may come
 * several in one piece (pipelining): the ones before the cut are let through.
 */
const cutIn = (text: string, cut: Cut | undefined): number =>
	cut === undefined ? -1 : `\r\n${text.toUpperCase()}`.indexOf(`\r\n${cut}`)

export async function startWire(smtpPort: number) {
	const wire: Wire = { cut: undefined, conversations: 0 }
	const sockets = new Set<Socket>()
	const server: Server = createServer((client) => {
		wire.conversations++
		const upstream = connect(smtpPort, '127.0.0.1')
		const end = tied(client, upstream, sockets)
		if (wire.cut === 'connect') return end()
		carry(wire, client, upstream, end)
	})
	await new Promise<void>((resolve) => {
		server.listen(0, '127.0.0.1', resolve)
	})
	return Object.assign(wire, {
		port: (server.address() as AddressInfo).port,
		stop: () =>
			new Promise<void>((resolve) => {
				for (const socket of sockets) socket.destroy()
				server.close(() => resolve())
			}),
	})
}
