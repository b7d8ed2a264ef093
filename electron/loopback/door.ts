/** Who gets in: the address carries a token that works once; a cookie follows it. */
import { randomBytes, timingSafeEqual } from 'node:crypto'
import type { IncomingMessage, ServerResponse } from 'node:http'
import { refuse, setHeaders } from './replies.ts'

const cookieName = 'lastwright='

function same(given: string, wanted: string): boolean {
	const [left, right] = [Buffer.from(given), Buffer.from(wanted)]
	return left.length === right.length && timingSafeEqual(left, right)
}
export class Door {
	readonly token = randomBytes(24).toString('base64url')
	readonly #cookie = randomBytes(32).toString('base64url')
	#used = false

	/** Whether the request carries the cookie. */
	knows(request: IncomingMessage): boolean {
		return (request.headers.cookie ?? '')
			.split(/;\s*/)
			.filter((cookie) => cookie.startsWith(cookieName))
			.some((cookie) => same(cookie.slice(cookieName.length), this.#cookie))
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
		response.setHeader(
			'set-cookie',
			`${cookieName}${this.#cookie}; HttpOnly; SameSite=Strict; Path=/`,
		)
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
}
