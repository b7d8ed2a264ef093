/** The same screens over 127.0.0.1, for a PC that cannot run Electron, and for tests. */
import { randomBytes } from 'node:crypto'
import { createServer, type IncomingMessage, type Server, type ServerResponse } from 'node:http'
import type { AddressInfo, Socket } from 'node:net'
import { parseJson, RepeatedKey } from '../../shared/engine/plain/json.ts'
import type { App } from '../app.ts'
import { guardConnections } from './connections.ts'
import { Door } from './door.ts'
import { askedOf, readBody, refusedHeaders, refusedPost, refusedSite } from './gate.ts'
import { builtScreens, readPage, resolvePage } from './pages.ts'
import { type Ends, lookAround, type Peer } from './peer.ts'
import { answerJson, hangUp, refuse, setHeaders } from './replies.ts'

/** What one request may take; common practice, no source. */
const limits = {
	bodyBytes: 20 * 1024 * 1024,
	headerBytes: 16 * 1024,
	headerLines: 64,
	headersMs: 10_000,
	requestMs: 60_000,
	idleMs: 5_000,
	lookMs: 2_000,
	/** a call that works may be silent for longer */
	quietMs: 60_000,
	connections: 64,
	requestsEach: 10_000,
}
type LoopbackLimits = typeof limits
export interface Loopback {
	/** the address that opens the screens, once */
	url: string
	port: number
	close: () => Promise<void>
}
export interface LoopbackOptions {
	/** a free one where absent */
	port?: number | undefined
	/** the folder of the built screens */
	pages?: string
	limits?: Partial<LoopbackLimits>
	/** whose process is at the other end */
	peer?: (ends: Ends) => Peer
}
/** What a request is answered from. */
interface Serving {
	app: Pick<App, 'call'>
	pages: string
	limits: LoopbackLimits
	door: Door
	/** name and port that this server answers to */
	host: string
	/** marks a connection while its call is worked out */
	working: <T>(socket: Socket, work: () => Promise<T>) => Promise<T>
}

/** Listens on 127.0.0.1 only. The address carries a token that works once; a cookie follows it. */
export async function openLoopback(
	app: Pick<App, 'call'>,
	options: LoopbackOptions = {},
): Promise<Loopback> {
	const may = { ...limits, ...options.limits }
	const server = listener(may)
	const { peer } = options
	const { working } = guardConnections(server, may, peer ? () => peer : lookAround)
	await new Promise<void>((resolve, reject) =>
		server.once('error', reject).listen(options.port ?? 0, '127.0.0.1', resolve),
	)
	const { port } = server.address() as AddressInfo
	const serving: Serving = {
		app,
		pages: options.pages ?? builtScreens,
		limits: may,
		door: new Door(port),
		host: `127.0.0.1:${port}`,
		working,
	}
	server.on('request', (request, response) => {
		answer(serving, request, response).catch(() =>
			refuse(response, { status: 500, message: 'Lastwright could not answer this.' }),
		)
	})
	return {
		url: `http://${serving.host}/?t=${serving.door.token}`,
		port,
		close: () =>
			new Promise((resolve) => {
				server.close(() => resolve())
				server.closeAllConnections()
			}),
	}
}
/** A server within its limits; it does not listen yet. */
function listener(may: LoopbackLimits): Server {
	const server = createServer({
		maxHeaderSize: may.headerBytes,
		headersTimeout: may.headersMs,
		requestTimeout: may.requestMs,
		keepAliveTimeout: may.idleMs,
		connectionsCheckingInterval: may.lookMs,
	})
	server.maxRequestsPerSocket = may.requestsEach
	// one more than allowed, so that a request with too many is seen and refused instead of read
	// without its last lines
	server.maxHeadersCount = may.headerLines + 1
	return server
}
async function answer(
	serving: Serving,
	request: IncomingMessage,
	response: ServerResponse,
): Promise<void> {
	const { host, door } = serving
	const refused = refusedHeaders(request, host, serving.limits.headerLines)
	if (refused) return hangUp(request, response, refused)
	const asked = askedOf(request, host)
	if ('status' in asked) return hangUp(request, response, asked)
	const { path, url } = asked
	if (request.method === 'GET' && path === '/' && url.searchParams.has('t'))
		return door.admit(request, response, url.searchParams.get('t') ?? '')
	if (!door.knows(request))
		return hangUp(request, response, {
			status: 403,
			message: 'Open Lastwright by the address it printed at its start.',
		})
	const elsewhere = refusedSite(request)
	if (elsewhere) return hangUp(request, response, elsewhere)
	if (request.method === 'POST') return answerCall(serving, request, response, path)
	if (request.method !== 'GET' && request.method !== 'HEAD')
		return hangUp(request, response, {
			status: 405,
			message: 'Only GET, HEAD and POST are answered here.',
		})
	givePage(serving.pages, request, response, path)
}
function givePage(
	pages: string,
	request: IncomingMessage,
	response: ServerResponse,
	path: string,
): void {
	const file = resolvePage(pages, path)
	if (file === undefined) {
		refuse(response, { status: 404, message: 'There is nothing at this address.' })
		return
	}
	const nonce = randomBytes(18).toString('base64')
	const page = readPage(file, nonce)
	setHeaders(response, nonce)
	response.writeHead(200, { 'content-type': page.type, 'content-length': page.body.byteLength })
	response.end(request.method === 'HEAD' ? undefined : page.body)
}
const notJson = (error: unknown): string =>
	error instanceof RepeatedKey
		? `The request cannot stand. Nothing was changed: ${error.path}: ${error.message}.`
		: 'The request is not JSON.'
async function answerCall(
	{ app, host, limits: { bodyBytes }, working }: Serving,
	request: IncomingMessage,
	response: ServerResponse,
	path: string,
): Promise<void> {
	const refused = refusedPost(request, host, path)
	if (refused) return hangUp(request, response, refused)
	const bytes = await readBody(request, bodyBytes)
	if (bytes === undefined)
		return hangUp(request, response, {
			status: 413,
			message: `The request is larger than ${bodyBytes / 1024 / 1024} MB.`,
		})
	let input: unknown
	try {
		input = parseJson(new TextDecoder('utf-8', { fatal: true }).decode(bytes))
	} catch (error) {
		return refuse(response, { status: 400, message: notJson(error) })
	}
	const name = path.slice('/call/'.length)
	answerJson(response, 200, await working(request.socket, () => app.call(name, input)))
}
