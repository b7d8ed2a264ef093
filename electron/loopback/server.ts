/** The same screens over 127.0.0.1, for a PC that cannot run Electron, and for tests. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import type { App } from '../app.ts'
import { builtScreens, cspFor, readPage, resolvePage } from './pages.ts'

const bodyLimit = 20 * 1024 * 1024
export interface Loopback { url: string; port: number; close: () => Promise<void>; /** resolves when the screens have said goodbye and none came back */ idle: Promise<void> }
const same = (a: string, b: string) => a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b))

/** Listens on 127.0.0.1 only. The address carries a token that works once; a cookie follows it. */
export async function openLoopback(app: App, options: { port?: number; pages?: string } = {}): Promise<Loopback> {
	const pages = options.pages ?? builtScreens
	const token = randomBytes(24).toString('base64url')
	const cookie = randomBytes(32).toString('base64url')
	let used = false
	let goodbye = () => {}
	const idle = new Promise<void>((resolve) => { goodbye = resolve })
	let leaving: NodeJS.Timeout | undefined
	const server: Server = createServer({ maxHeaderSize: 16 * 1024, requestTimeout: 60_000 }, (request, response) => {
		answer(request, response).catch(() => refuse(response, 500, 'Lastwright could not answer this.'))
	})
	await new Promise<void>((resolve, reject) => server.once('error', reject).listen(options.port ?? 0, '127.0.0.1', resolve))
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
		if (response.headersSent) return void response.end()
		headers(response, 'none')
		response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify({ ok: false, message }))
	}
	function known(request: IncomingMessage): boolean {
		return (request.headers.cookie ?? '').split(/;\s*/).some((one) => one.startsWith('lastwright=') && same(one.slice('lastwright='.length), cookie))
	}
	async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
		// a page of another site that resolves its name to 127.0.0.1 still sends its own Host
		if (request.headers.host !== host) return refuse(response, 403, 'This address is not served here.')
		const url = new URL(request.url ?? '/', `http://${host}`)
		const rawPath = (request.url ?? '/').split('?')[0] ?? '/'
		if (request.method === 'GET' && rawPath === '/' && url.searchParams.has('t')) {
			const given = url.searchParams.get('t') ?? ''
			if (used || !same(given, token)) return refuse(response, 403, 'This address was used already or is not right. Start Lastwright again for a new one.')
			used = true
			headers(response, 'none')
			return void response.writeHead(303, { location: '/', 'set-cookie': `lastwright=${cookie}; HttpOnly; SameSite=Strict; Path=/` }).end()
		}
		if (!known(request)) return refuse(response, 403, 'Open Lastwright by the address it printed at its start.')
		if (request.method === 'POST') {
			if (request.headers.origin !== `http://${host}`) return refuse(response, 403, 'This page may not call Lastwright.')
			if (!/^application\/json\b/.test(request.headers['content-type'] ?? '')) return refuse(response, 415, 'Only JSON is read here.')
			if (rawPath === '/goodbye') {
				leaving = setTimeout(goodbye, 3000)
				return refuse(response, 200, 'goodbye')
			}
			if (!rawPath.startsWith('/call/')) return refuse(response, 404, 'There is nothing at this address.')
			const text = await readBody(request)
			if (text === undefined) return refuse(response, 413, `The request is larger than ${bodyLimit / 1024 / 1024} MB.`)
			let input: unknown
			try { input = JSON.parse(text) } catch { return refuse(response, 400, 'The request is not JSON.') }
			const result = await app.call(rawPath.slice('/call/'.length), input)
			headers(response, 'none')
			return void response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(result))
		}
		if (request.method !== 'GET' && request.method !== 'HEAD') return refuse(response, 405, 'Only GET, HEAD and POST are answered here.')
		const file = resolvePage(pages, rawPath)
		if (file === undefined) return refuse(response, 404, 'There is nothing at this address.')
		if (rawPath === '/') clearTimeout(leaving)
		const nonce = randomBytes(18).toString('base64')
		const page = readPage(file, nonce)
		headers(response, nonce)
		response.writeHead(200, { 'content-type': page.type, 'content-length': page.body.byteLength })
		response.end(request.method === 'HEAD' ? undefined : page.body)
	}
	async function readBody(request: IncomingMessage): Promise<string | undefined> {
		const parts: Buffer[] = []
		let size = 0
		for await (const part of request as AsyncIterable<Buffer>) {
			size += part.length
			if (size > bodyLimit) return undefined
			parts.push(part)
		}
		return Buffer.concat(parts).toString('utf8')
	}
	return { url: `http://${host}/?t=${token}`, port, idle, close: () => new Promise((resolve) => { server.close(() => resolve()); server.closeAllConnections() }) }
}
