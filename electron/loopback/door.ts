/** Who gets in: the address carries a token that works once; a cookie follows it. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { refuse, setHeaders } from './replies.ts'

/**
 * Browsers keep cookies by host and send them to every port of it. The port in the name lets several
 * programs on this PC stand side by side, and none takes the cookie of another for its own.
 */
const nameOf = (port: number): string => `lastwright-${port}`
const anyName = /^lastwright(-\d+)?$/
/**
 * Each start leaves a cookie behind for as long as the browser runs: the oldest beyond these go, so
 * that the header never grows too long to be read.
 */
const mostCookies = 16

function same(given: string, wanted: string): boolean {
	const [left, right] = [Buffer.from(given), Buffer.from(wanted)]
	return left.length === right.length && timingSafeEqual(left, right)
}
/** Name and value of each, in the order of the request: browsers send the oldest first. */
const cookiesOf = (request: IncomingMessage): [name: string, value: string][] =>
	(request.headers.cookie ?? '').split(/;\s*/).map((cookie) => {
		const end = cookie.indexOf('=')
		return end < 0 ? [cookie, ''] : [cookie.slice(0, end), cookie.slice(end + 1)]
	})
const attributes = 'HttpOnly; SameSite=Strict; Path=/'

export class Door {
	readonly token = randomBytes(24).toString('base64url')
	readonly #value = randomBytes(32).toString('base64url')
	readonly #name: string
	#used = false

	constructor(port: number) {
		this.#name = nameOf(port)
	}
	/** Whether the request carries the cookie. */
	knows(request: IncomingMessage): boolean {
		return cookiesOf(request).some(
			([name, value]) => name === this.#name && same(value, this.#value),
		)
	}
	/** The token buys the cookie, once. */
	admit(request: IncomingMessage, response: ServerResponse, given: string): void {
		if (this.#used || !same(given, this.token)) {
			refuse(response, {
				status: 403,
				message:
					'This address was used already or is not right. Start Lastwright again for a new one.',
			})
			return
		}
		this.#used = true
		setHeaders(response, 'none')
		response.setHeader('set-cookie', [
			...this.#outworn(request).map((name) => `${name}=; Max-Age=0; ${attributes}`),
			`${this.#name}=${this.#value}; ${attributes}`,
		])
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
	/** Names of cookies of earlier starts that go, the oldest. */
	#outworn(request: IncomingMessage): string[] {
		const names = cookiesOf(request)
			.map(([name]) => name)
			.filter((name) => anyName.test(name) && name !== this.#name)
		return names.slice(0, Math.max(0, names.length - mostCookies + 1))
	}
}
