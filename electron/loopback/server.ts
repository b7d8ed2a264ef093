/** The same screens over 127.0.0.1, for a PC that cannot run Electron, and for tests. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo, Socket } from 'node:net'
import type { App } from '../app.ts'
import { builtScreens, cspFor, readPage, resolvePage } from './pages.ts'
import { type Ends, peerUid } from './peer.ts'

/** What one request may take; common practice, no source. */
const limits = {
	bodyBytes: 20 * 1024 * 1024,
	headerBytes: 16 * 1024,
	headerLines: 64,
	headersMs: 10_000,
	requestMs: 60_000,
	idleMs: 5_000,
	lookMs: 2_000,
	connections: 64,
}
export type LoopbackLimits = typeof limits
export interface Loopback {
	url: string
	port: number
	close: () => Promise<void>
	/** resolves when the screens have said goodbye and none came back */
	idle: Promise<void>
}
export interface LoopbackOptions {
	port?: number
	pages?: string
	/**
	 * whose process is at the other end; undefined where the system does not tell
	 */
	limits?: Partial<LoopbackLimits>
	peer?: (ends: Ends) => number | undefined
}

function same(a: string, b: string): boolean {
	const [left, right] = [Buffer.from(a), Buffer.from(b)]
	return left.length === right.length && timingSafeEqual(left, right)
}
/** A header that came twice may be read in two ways by two readers; none of ours ever does. */
const single = ['host', 'origin', 'cookie', 'content-type', 'content-length']
function doubled(request: IncomingMessage): boolean {
	const names = request.rawHeaders.filter((_, at) => at % 2 === 0).map((name) => name.toLowerCase())
	return single.some((name) => names.indexOf(name) !== names.lastIndexOf(name))
}

/** Listens on 127.0.0.1 only. The address carries a token that works once; a cookie follows it. */
export async function openLoopback(
	app: Pick<App, 'call'>,
	options: LoopbackOptions = {},
): Promise<Loopback> {
	const pages = options.pages ?? builtScreens
	const may = { ...limits, ...options.limits }
	const peer = options.peer ?? peerUid
	const me = process.getuid?.()
	const token = randomBytes(24).toString('base64url')
	const cookie = randomBytes(32).toString('base64url')
	let used = false
	let goodbye = () => {}
	const idle = new Promise<void>((resolve) => {
		goodbye = resolve
	})
	let leaving: NodeJS.Timeout | undefined
	const strangers = new WeakSet<Socket>()
	const server: Server = createServer(
		{
			maxHeaderSize: may.headerBytes,
			headersTimeout: may.headersMs,
			requestTimeout: may.requestMs,
			keepAliveTimeout: may.idleMs,
			connectionsCheckingInterval: may.lookMs,
		},
		(request, response) => {
			answer(request, response).catch(() =>
				refuse(response, 500, 'Lastwright could not answer this.'),
			)
		},
	)
	server.maxConnections = may.connections
	// one more than allowed, so that a request with too many is seen and refused instead of read
	// without its last lines
	server.maxHeadersCount = may.headerLines + 1
	server.on('connection', (socket) => {
		const uid = peer(socket)
		if (uid !== undefined && me !== undefined && uid !== me) strangers.add(socket)
	})
	await new Promise<void>((resolve, reject) =>
		server.once('error', reject).listen(options.port ?? 0, '127.0.0.1', resolve),
	)
	const { port } = server.address() as AddressInfo
	const host = `127.0.0.1:${port}`

	function headers(response: ServerResponse, nonce: string): void {
		response.setHeader('content-security-policy', cspFor(nonce))
		response.setHeader('x-content-type-options', 'nosniff')
		response.setHeader('cache-control', 'no-store')
		response.setHeader('referrer-policy', 'no-referrer')
		response.setHeader('cross-origin-opener-policy', 'same-origin')
		response.setHeader('cross-origin-resource-policy', 'same-origin')
	}
	function refuse(response: ServerResponse, status: number, message: string): void {
		if (response.headersSent) {
			response.end()
			return
		}
		headers(response, 'none')
		response
			.writeHead(status, { 'content-type': 'application/json' })
			.end(JSON.stringify({ ok: false, message }))
	}
	/** Refuses a request whose rest is not read: the connection ends with the answer. */
	function hangUp(
		request: IncomingMessage,
		response: ServerResponse,
		status: number,
		message: string,
	): void {
		response.setHeader('connection', 'close')
		response.once('finish', () => setTimeout(() => request.destroy(), 200).unref())
		refuse(response, status, message)
		request.resume()
	}
	function known(request: IncomingMessage): boolean {
		return (request.headers.cookie ?? '')
			.split(/;\s*/)
			.some((one) => one.startsWith('lastwright=') && same(one.slice('lastwright='.length), cookie))
	}
	/** The token buys the cookie, once. */
	function admit(request: IncomingMessage, response: ServerResponse, given: string): void {
		if (used || !same(given, token)) {
			refuse(
				response,
				403,
				'This address was used already or is not right. Start Lastwright again for a new one.',
			)
			return
		}
		used = true
		headers(response, 'none')
		response.setHeader('set-cookie', `lastwright=${cookie}; HttpOnly; SameSite=Strict; Path=/`)
		// a strict cookie does not follow a redirect that began on a file or another site: there the
		// page itself goes on
		if (request.headers['sec-fetch-site'] === 'cross-site')
			response
				.writeHead(200, { 'content-type': 'text/html; charset=utf-8' })
				.end(
					'<!doctype html><html lang="en"><title>Lastwright</title><meta http-equiv="refresh" ' +
						'content="0;url=/"><p>Opening Lastwright.</p></html>',
				)
		else response.writeHead(303, { location: '/' }).end()
	}
	async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		if (strangers.has(request.socket))
			return hangUp(request, response, 403, 'This connection comes from another user of this PC.')
		if (request.rawHeaders.length / 2 > may.headerLines)
			return hangUp(
				request,
				response,
				431,
				`The request has more than ${may.headerLines} header lines.`,
			)
		if (doubled(request))
			return hangUp(request, response, 400, 'The request gives one of its headers twice.')
		// a page of another site that resolves its name to 127.0.0.1 still sends its own Host
		if (request.headers.host !== host)
			return hangUp(request, response, 403, 'This address is not served here.')
		const asked = request.url ?? '/'
		if (!asked.startsWith('/') || !URL.canParse(asked, `http://${host}`))
			return hangUp(request, response, 400, 'The address of the request cannot be read.')
		const url = new URL(asked, `http://${host}`)
		const rawPath = asked.split('?')[0] ?? '/'
		if (request.method === 'GET' && rawPath === '/' && url.searchParams.has('t'))
			return admit(request, response, url.searchParams.get('t') ?? '')
		if (!known(request))
			return hangUp(
				request,
				response,
				403,
				'Open Lastwright by the address it printed at its start.',
			)
		// cookies do not tell ports apart: a page of another server on this PC would bring ours along
		if (['cross-site', 'same-site'].includes(String(request.headers['sec-fetch-site'] ?? '')))
			return hangUp(request, response, 403, 'This page may not call Lastwright.')
		if (request.method === 'POST') return take(request, response, rawPath)
		if (request.method !== 'GET' && request.method !== 'HEAD')
			return hangUp(request, response, 405, 'Only GET, HEAD and POST are answered here.')
		const file = resolvePage(pages, rawPath)
		if (file === undefined) return refuse(response, 404, 'There is nothing at this address.')
		if (rawPath === '/') clearTimeout(leaving)
		const nonce = randomBytes(18).toString('base64')
		const page = readPage(file, nonce)
		headers(response, nonce)
		response.writeHead(200, { 'content-type': page.type, 'content-length': page.body.byteLength })
		response.end(request.method === 'HEAD' ? undefined : page.body)
	}
	async function take(
		request: IncomingMessage,
		response: ServerResponse,
		rawPath: string,
	): Promise<void> {
		if (request.headers.origin !== `http://${host}`)
			return hangUp(request, response, 403, 'This page may not call Lastwright.')
		if (!/^application\/json(?:\s*;.*)?$/i.test(request.headers['content-type'] ?? ''))
			return hangUp(request, response, 415, 'Only JSON is read here.')
		if (rawPath === '/goodbye') {
			leaving = setTimeout(goodbye, 3000)
			return refuse(response, 200, 'goodbye')
		}
		if (!rawPath.startsWith('/call/'))
			return hangUp(request, response, 404, 'There is nothing at this address.')
		const bytes = await readBody(request)
		if (bytes === undefined)
			return hangUp(
				request,
				response,
				413,
				`The request is larger than ${may.bodyBytes / 1024 / 1024} MB.`,
			)
		let input: unknown
		try {
			input = JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
		} catch {
			return refuse(response, 400, 'The request is not JSON.')
		}
		const result = await app.call(rawPath.slice('/call/'.length), input)
		headers(response, 'none')
		response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(result))
	}
	async function readBody(request: IncomingMessage): Promise<Buffer | undefined> {
		if (Number(request.headers['content-length'] ?? 0) > may.bodyBytes) return undefined
		const parts: Buffer[] = []
		let size = 0
		// the connection stays open past the limit, so that the refusal can still be sent
		for await (const part of request.iterator({
			destroyOnReturn: false,
		}) as AsyncIterable<Buffer>) {
			size += part.length
			if (size > may.bodyBytes) return undefined
			parts.push(part)
		}
		return Buffer.concat(parts)
	}
	return {
		url: `http://${host}/?t=${token}`,
		port,
		idle,
		close: () =>
			new Promise((resolve) => {
				server.close(() => resolve())
				server.closeAllConnections()
			}),
	}
}
