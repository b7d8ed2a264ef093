/** How the loopback server answers: headers that every answer has, and refusals in words. */
import type { IncomingMessage, ServerResponse } from 'node:http'
import { cspFor } from './pages.ts'

/** Why a request is not answered. */
export interface Refused {
	status: number
	message: string
}
/** How long a connection may still read its refusal before it is cut; a choice of this program. */
const cutAfterMs = 200

/** @param nonce what scripts and styles of the page carry; 'none' where there are none */
export function setHeaders(response: ServerResponse, nonce: string): void {
	response.setHeader('content-security-policy', cspFor(nonce))
	response.setHeader('x-content-type-options', 'nosniff')
	response.setHeader('cache-control', 'no-store')
	response.setHeader('referrer-policy', 'no-referrer')
	response.setHeader('cross-origin-opener-policy', 'same-origin')
	response.setHeader('cross-origin-resource-policy', 'same-origin')
}
export function answerJson(response: ServerResponse, status: number, answer: unknown): void {
	setHeaders(response, 'none')
	response.writeHead(status, { 'content-type': 'application/json' }).end(JSON.stringify(answer))
}
export function refuse(response: ServerResponse, { status, message }: Refused): void {
	if (response.headersSent) response.end()
	else answerJson(response, status, { ok: false, code: 'call.refused-at-the-door', message })
}
/** Refuses a request whose rest is not read: the connection ends with the answer. */
export function hangUp(request: IncomingMessage, response: ServerResponse, refused: Refused): void {
	response.setHeader('connection', 'close')
	response.once('finish', () => setTimeout(() => request.destroy(), cutAfterMs).unref())
	refuse(response, refused)
	request.resume()
}
