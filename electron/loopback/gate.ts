/** What a request must be before anything of it is read. */
import type { IncomingMessage } from 'node:http'
import type { Refused } from './replies.ts'

/** A header that came twice may be read in two ways by two readers; none of ours ever does. */
const single = ['host', 'origin', 'cookie', 'content-type', 'content-length']
function doubled(request: IncomingMessage): boolean {
	const names = request.rawHeaders
		.filter((_, index) => index % 2 === 0)
		.map((name) => name.toLowerCase())
	return single.some((name) => names.indexOf(name) !== names.lastIndexOf(name))
}
/** An address that was asked for. */
export interface Asked {
	/** as it stands in the request, without what follows a question mark */
	path: string
	url: URL
}
/** @param host name and port that this server answers to */
export function askedOf(request: IncomingMessage, host: string): Asked | Refused {
	const asked = request.url ?? '/'
	if (!asked.startsWith('/') || !URL.canParse(asked, `http://${host}`))
		return { status: 400, message: 'The address of the request cannot be read.' }
	return { path: asked.split('?')[0] ?? '/', url: new URL(asked, `http://${host}`) }
}
/** Why a request is refused by its headers alone; undefined where it is not. */
export function refusedHeaders(
	request: IncomingMessage,
	host: string,
	mostLines: number,
): Refused | undefined {
	if (request.rawHeaders.length / 2 > mostLines)
		return { status: 431, message: `The request has more than ${mostLines} header lines.` }
	if (doubled(request))
		return { status: 400, message: 'The request gives one of its headers twice.' }
	// a page of another site that resolves its name to 127.0.0.1 still sends its own Host
	if (request.headers.host !== host)
		return { status: 403, message: 'This address is not served here.' }
	return undefined
}
/** Why a request with our cookie is refused: cookies do not tell ports apart. */
export function refusedSite(request: IncomingMessage): Refused | undefined {
	// a page of another server on this PC would bring our cookie along
	const site = String(request.headers['sec-fetch-site'] ?? '')
	return site === 'cross-site' || site === 'same-site'
		? { status: 403, message: 'This page may not call Lastwright.' }
		: undefined
}
/** Why something sent to us is not read; undefined where it is. */
export function refusedPost(
	request: IncomingMessage,
	host: string,
	path: string,
): Refused | undefined {
	if (request.headers.origin !== `http://${host}`)
		return { status: 403, message: 'This page may not call Lastwright.' }
	if (!/^application\/json(?:\s*;.*)?$/i.test(request.headers['content-type'] ?? ''))
		return { status: 415, message: 'Only JSON is read here.' }
	if (!path.startsWith('/call/'))
		return { status: 404, message: 'There is nothing at this address.' }
	return undefined
}
/** The body of a request. @returns undefined where it is larger than allowed */
export async function readBody(
	request: IncomingMessage,
	mostBytes: number,
): Promise<Buffer | undefined> {
	if (Number(request.headers['content-length'] ?? 0) > mostBytes) return undefined
	const parts: Buffer[] = []
	let size = 0
	// the connection stays open past the limit, so that the refusal can still be sent
	for await (const part of request.iterator({ destroyOnReturn: false }) as AsyncIterable<Buffer>) {
		size += part.length
		if (size > mostBytes) return undefined
		parts.push(part)
	}
	return Buffer.concat(parts)
}
