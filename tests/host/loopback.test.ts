/**
 * The loopback host under attack: another page, another user's process, a rebound name, a replayed
 * token, oversized, malformed and slow requests. All over real sockets.
 */
import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { afterEach, describe, expect, it, test } from 'vitest'
import type { App } from '../../electron/app.ts'
import { writeDoor } from '../../electron/loopback/browser.ts'
import { uidIn } from '../../electron/loopback/peer.ts'
import {
	type Loopback,
	type LoopbackOptions,
	openLoopback,
} from '../../electron/loopback/server.ts'

interface Reply {
	status: number
	text: string
	headers: Map<string, string>
}
const closing: (() => Promise<void>)[] = []
afterEach(async () => {
	for (const close of closing.splice(0)) await close()
})

/** Sends exactly these bytes and reads until the other side ends, or until `waitMs` of silence. */
function raw(port: number, chunks: (string | Buffer)[], waitMs = 1500): Promise<string> {
	return new Promise((resolve) => {
		let text = ''
		const socket = connect(port, '127.0.0.1', () => {
			for (const chunk of chunks) socket.write(chunk)
		})
		const done = () => {
			socket.destroy()
			resolve(text)
		}
		socket.setTimeout(waitMs, done)
		socket.on('data', (part) => {
			text += part.toString('latin1')
		})
		socket.on('error', () => {})
		socket.on('close', done)
	})
}
function read(text: string): Reply {
	const [head = '', ...rest] = text.split('\r\n\r\n')
	const [first = '', ...lines] = head.split('\r\n')
	return {
		status: Number(first.split(' ')[1] ?? 0),
		text: rest.join('\r\n\r\n'),
		headers: new Map(
			lines.map((line) => [
				line.slice(0, line.indexOf(':')).toLowerCase(),
				line.slice(line.indexOf(':') + 1).trim(),
			]),
		),
	}
}
async function open(options: LoopbackOptions = {}) {
	const calls: [string, unknown][] = []
	const app: App = {
		call: async (name, input) => {
			calls.push([name, input])
			return { ok: true, value: 'answered' }
		},
		close: () => {},
	}
	const pages = mkdtempSync(join(tmpdir(), 'lastwright-pages-'))
	writeFileSync(
		join(pages, 'index.html'),
		'<!doctype html><meta name="csp-nonce" content="__NONCE__">',
	)
	const loop: Loopback = await openLoopback(app, { pages, ...options })
	closing.push(loop.close)
	const host = `127.0.0.1:${loop.port}`
	const ask = async (lines: string[], body = '', method = 'GET', path = '/') =>
		read(
			await raw(loop.port, [
				`${method} ${path} ` +
					`HTTP/1.1\r\n${lines.map((line) => `${line}\r\n`).join('')}Connection: ` +
					`close\r\n\r\n${body}`,
			]),
		)
	const token = loop.url.slice(loop.url.indexOf('/?t='))
	const enter = async () => {
		const reply = await ask([`Host: ${host}`], '', 'GET', token)
		return (reply.headers.get('set-cookie') ?? '').split(';')[0] ?? ''
	}
	const post = (lines: string[], body: string, path = '/call/players.search') =>
		ask([...lines, `Content-Length: ${Buffer.byteLength(body)}`], body, 'POST', path)
	return {
		loop,
		host,
		calls,
		ask,
		token,
		enter,
		post,
		good: (cookie: string) => [
			`Host: ${host}`,
			`Cookie: ${cookie}`,
			`Origin: http://${host}`,
			'Content-Type: application/json',
		],
	}
}

test('the one who has the address gets in, calls and is answered', async () => {
	const { enter, post, good, ask, host, calls } = await open()
	const cookie = await enter()
	expect(cookie).toMatch(/^lastwright=[\w-]{43}$/)
	const page = await ask([`Host: ${host}`, `Cookie: ${cookie}`])
	expect(page.status).toBe(200)
	expect(page.headers.get('content-security-policy')).toContain("frame-ancestors 'none'")
	expect((await post(good(cookie), '{"query":""}')).text).toContain('answered')
	expect(calls).toEqual([['players.search', { query: '' }]])
})
test('a token is worth one use; a wrong, longer or foreign one none', async () => {
	const { ask, host, token, enter } = await open()
	for (const wrong of [
		'/?t=',
		'/?t=abc',
		`${token}x`,
		`/?t=${'é'.repeat(32)}`.replace(/é/g, '%C3%A9'),
		token.slice(0, -1),
	])
		expect((await ask([`Host: ${host}`], '', 'GET', wrong)).status, wrong).toBe(403)
	expect(await enter()).not.toBe('')
	const again = await ask([`Host: ${host}`], '', 'GET', token)
	expect([again.status, again.headers.get('set-cookie')]).toEqual([403, undefined])
})
test('a token that came from a file or another site sets the cookie and lets the page itself go on', async () => {
	const { ask, host, token } = await open()
	const reply = await ask([`Host: ${host}`, 'Sec-Fetch-Site: cross-site'], '', 'GET', token)
	expect([reply.status, reply.headers.get('location')]).toEqual([200, undefined])
	expect(reply.headers.get('set-cookie')).toContain('HttpOnly; SameSite=Strict')
	expect(reply.text).toContain('http-equiv="refresh"')
})
describe('another page', () => {
	it.each([
		['no Origin', (lines: string[]) => lines.filter((line) => !line.startsWith('Origin')), 403],
		[
			'Origin of another site',
			(lines: string[]) =>
				lines.map((line) => (line.startsWith('Origin') ? 'Origin: https://evil.example' : line)),
			403,
		],
		[
			'Origin null',
			(lines: string[]) => lines.map((line) => (line.startsWith('Origin') ? 'Origin: null' : line)),
			403,
		],
		[
			'Origin of another port',
			(lines: string[]) =>
				lines.map((line) => (line.startsWith('Origin') ? 'Origin: http://127.0.0.1:1' : line)),
			403,
		],
		[
			'Origin that starts like ours',
			(lines: string[]) =>
				lines.map((line) => (line.startsWith('Origin') ? `${line}.evil.example` : line)),
			403,
		],
		[
			'a form, which needs no permission to be sent',
			(lines: string[]) =>
				lines.map((line) => (line.startsWith('Content-Type') ? 'Content-Type: text/plain' : line)),
			415,
		],
		[
			'a type that only begins like JSON',
			(lines: string[]) =>
				lines.map((line) =>
					line.startsWith('Content-Type') ? 'Content-Type: application/json-x' : line,
				),
			415,
		],
		[
			"a page of another port, by the browser's own word",
			(lines: string[]) => [...lines, 'Sec-Fetch-Site: same-site'],
			403,
		],
		[
			"a page of another site, by the browser's own word",
			(lines: string[]) => [...lines, 'Sec-Fetch-Site: cross-site'],
			403,
		],
		['no cookie', (lines: string[]) => lines.filter((line) => !line.startsWith('Cookie')), 403],
		[
			'a cookie with one letter changed',
			(lines: string[]) =>
				lines.map((line) =>
					line.startsWith('Cookie')
						? line.replace(/.$/, (last) => (last === 'A' ? 'B' : 'A'))
						: line,
				),
			403,
		],
	])('%s', async (_, change, status) => {
		const { enter, post, good, calls } = await open()
		expect((await post(change(good(await enter())), '{}')).status).toBe(status)
		expect(calls).toEqual([])
	})
	test('a question before the request gets no leave to go on', async () => {
		const { ask, host } = await open()
		const reply = await ask(
			[`Host: ${host}`, 'Origin: https://evil.example', 'Access-Control-Request-Method: POST'],
			'',
			'OPTIONS',
			'/call/players.search',
		)
		expect([reply.status, reply.headers.get('access-control-allow-origin')]).toEqual([
			403,
			undefined,
		])
	})
})
test(
	'a rebound name: every Host but ours is refused, with the right cookie and with the right ' +
		'token',
	async () => {
		const { ask, enter, host, loop, token } = await open()
		for (const name of [
			'evil.example',
			`evil.example:${loop.port}`,
			`localhost:${loop.port}`,
			'127.0.0.1',
			`127.0.0.1.evil.example:${loop.port}`,
			`[::1]:${loop.port}`,
		])
			expect((await ask([`Host: ${name}`], '', 'GET', token)).status, name).toBe(403)
		const cookie = await enter()
		for (const name of ['evil.example', `localhost:${loop.port}`])
			expect((await ask([`Host: ${name}`, `Cookie: ${cookie}`])).status, name).toBe(403)
		expect((await ask([`Host: ${host}`, 'Host: evil.example', `Cookie: ${cookie}`])).status).toBe(
			400,
		)
		expect((await ask([`Cookie: ${cookie}`])).status).toBe(400)
		expect(
			(await ask([`Host: ${host}`, `Cookie: ${cookie}`], '', 'GET', `http://${host}/`)).status,
		).toBe(400)
	},
)
test('it listens on 127.0.0.1 and on no other address of this PC', async () => {
	const { loop } = await open()
	const others = Object.values(networkInterfaces())
		.flat()
		.filter((one) => one !== undefined && one.family === 'IPv4' && one.address !== '127.0.0.1')
		.map((one) => one!.address)
	for (const address of [...others, '127.0.0.2', '::1']) {
		const reached = await new Promise<boolean>((resolve) => {
			const socket = connect(loop.port, address, () => {
				socket.destroy()
				resolve(true)
			})
			socket.on('error', () => resolve(false))
		})
		expect(reached, address).toBe(false)
	}
})
describe("another user's process", () => {
	test('is refused even with token and cookie, by what the system says of the connection', async () => {
		const { ask, host, token, calls } = await open({ peer: () => (process.getuid?.() ?? 0) + 1 })
		const reply = await ask([`Host: ${host}`], '', 'GET', token)
		if (process.getuid)
			expect([reply.status, reply.text]).toEqual([
				403,
				expect.stringContaining('another user of this PC'),
			])
		expect(calls).toEqual([])
	})
	test.skipIf(process.platform !== 'linux' || process.getuid?.() !== 0)(
		'a real process of another user',
		async () => {
			const { loop, enter, host } = await open()
			const cookie = await enter()
			const script =
				`exec 3<>/dev/tcp/127.0.0.1/${loop.port}; printf 'GET / ` +
				`HTTP/1.1\\r\\nHost: ${host}\\r\\nCookie: ${cookie}\\r\\nConnection: ` +
				`close\\r\\n\\r\\n' >&3; cat <&3`
			const run = (uid: number) =>
				new Promise<string>((resolve) => {
					execFile('/bin/bash', ['-c', script], { uid, timeout: 10_000, cwd: '/' }, (_, stdout) =>
						resolve(stdout),
					)
				})
			expect(read(await run(0)).status).toBe(200)
			const reply = read(await run(65534))
			expect([reply.status, reply.text]).toEqual([403, expect.stringContaining('another user')])
		},
	)
	test('reads the table of connections exactly', () => {
		const table =
			`  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   ` +
			`uid\n   0: 0100007F:1F90 0100007F:C001 01 00000000:00000000 00:00000000 ` +
			`00000000  1000 0 1\n   1: 0100007F:C001 0100007F:1F90 01 00000000:00000000 ` +
			`00:00000000 00000000  1001 0 2\n`
		const ends = {
			remoteAddress: '127.0.0.1',
			remotePort: 0xc001,
			localAddress: '127.0.0.1',
			localPort: 0x1f90,
		}
		expect([
			uidIn(table, ends),
			uidIn(table, { ...ends, remotePort: 0xc002 }),
			uidIn(table, {}),
		]).toEqual([1001, undefined, undefined])
	})
	test("the address stands on no command line, and its file is the owner's alone", () => {
		const folder = mkdtempSync(join(tmpdir(), 'lastwright-door-'))
		const address = writeDoor(folder, 'http://127.0.0.1:1/?t=secret')
		expect(address).toMatch(/^file:/)
		expect(address).not.toContain('secret')
		expect(readFileSync(fileURLToPath(address), 'utf8')).toContain('t=secret')
		if (process.platform !== 'win32') expect(statSync(fileURLToPath(address)).mode & 0o077).toBe(0)
		expect(() => writeDoor(folder, 'again')).toThrow()
	})
})
describe('oversized', () => {
	const small = { limits: { bodyBytes: 64 * 1024 } }
	test('by its own word, before a byte of it is read', async () => {
		const { enter, ask, good, calls } = await open(small)
		const reply = await ask(
			[...good(await enter()), 'Content-Length: 999999999'],
			'',
			'POST',
			'/call/x',
		)
		expect([reply.status, reply.text]).toEqual([413, expect.stringContaining('larger than')])
		expect(calls).toEqual([])
	})
	test('in pieces that never say how many, with the refusal still sent', async () => {
		const { loop, enter, good, calls } = await open(small)
		const piece = `${(16 * 1024).toString(16)}\r\n${'x'.repeat(16 * 1024)}\r\n`
		const text = await raw(loop.port, [
			`POST /call/x HTTP/1.1\r\n${good(await enter())
				.map((line) => `${line}\r\n`)
				.join('')}Transfer-Encoding: chunked\r\n\r\n`,
			...Array.from({ length: 12 }, () => piece),
		])
		expect(read(text).status).toBe(413)
		expect(calls).toEqual([])
	})
	test('header lines, too large or too many', async () => {
		const { ask, host, token } = await open()
		expect(
			(await ask([`Host: ${host}`, `X: ${'x'.repeat(17 * 1024)}`], '', 'GET', token)).status,
		).toBe(431)
		expect(
			(
				await ask(
					[`Host: ${host}`, ...Array.from({ length: 80 }, (_, at) => `X-${at}: 1`)],
					'',
					'GET',
					token,
				)
			).status,
		).toBe(431)
		expect((await ask([`Host: ${host}`], '', 'GET', `/?t=${'x'.repeat(17 * 1024)}`)).status).toBe(
			431,
		)
		expect(
			(
				await ask(
					[`Host: ${host}`, ...Array.from({ length: 50 }, (_, at) => `X-${at}: 1`)],
					'',
					'GET',
					token,
				)
			).status,
		).toBe(303)
	})
	test('a request at the limit is still read', async () => {
		const { enter, post, good, calls } = await open(small)
		const body = JSON.stringify('y'.repeat(64 * 1024 - 2))
		expect((await post(good(await enter()), body)).status).toBe(200)
		expect(calls).toHaveLength(1)
	})
})
describe('malformed', () => {
	it.each([
		['not HTTP at all', 'hello\r\n\r\n', 400],
		['a line folded into the next', 'GET / HTTP/1.1\r\nHost: H\r\n folded\r\n\r\n', 400],
		[
			'two lengths',
			'POST /call/x HTTP/1.1\r\nHost: H\r\nContent-Length: 2\r\nContent-Length: 3\r\n\r\n{}',
			400,
		],
		[
			'length and pieces at once',
			'POST /call/x HTTP/1.1\r\nHost: H\r\nContent-Length: 2\r\nTransfer-Encoding: ' +
				'chunked\r\n\r\n0\r\n\r\n',
			400,
		],
		[
			'a length below nothing',
			'POST /call/x HTTP/1.1\r\nHost: H\r\nContent-Length: -1\r\n\r\n',
			400,
		],
		['a NUL in a header', 'GET / HTTP/1.1\r\nHost: H\r\nX: a\0b\r\n\r\n', 400],
		['an address that is none', 'GET //[ HTTP/1.1\r\nHost: H\r\n\r\n', 400],
		['a method of its own', 'BREW / HTTP/1.1\r\nHost: H\r\n\r\n', 400],
	])('%s', async (_, text, status) => {
		const { loop, host, calls } = await open()
		expect(read(await raw(loop.port, [text.replace('Host: H', `Host: ${host}`)])).status).toBe(
			status,
		)
		expect(calls).toEqual([])
	})
	it.each([
		['half a sentence', '{"query":'],
		['nothing', ''],
		['letters that are no UTF-8', '"\xff\xfe"'],
		['a million brackets', '['.repeat(1_000_000)],
	])('a body of %s', async (_, body) => {
		const { loop, enter, good, calls } = await open()
		const bytes = Buffer.from(body, 'latin1')
		const text = await raw(loop.port, [
			`POST /call/x HTTP/1.1\r\n${good(await enter())
				.map((line) => `${line}\r\n`)
				.join('')}Content-Length: ${bytes.length}\r\nConnection: close\r\n\r\n`,
			bytes,
		])
		expect([read(text).status, read(text).text]).toEqual([400, expect.stringContaining('not JSON')])
		expect(calls).toEqual([])
	})
	test('methods that are not ours, and paths outside the folder', async () => {
		const { ask, host, enter } = await open()
		const cookie = await enter()
		for (const method of ['PUT', 'DELETE', 'PATCH', 'TRACE', 'OPTIONS'])
			expect((await ask([`Host: ${host}`, `Cookie: ${cookie}`], '', method)).status, method).toBe(
				405,
			)
		for (const path of [
			'/%2e%2e/%2e%2e/etc/passwd',
			'/..%2f..%2fetc/passwd',
			'/..%5c..%5cx',
			'/%00',
			'/%',
			'/assets',
			'/index.html/..',
		])
			expect(
				(await ask([`Host: ${host}`, `Cookie: ${cookie}`], '', 'GET', path)).status,
				path,
			).toBe(404)
	})
	test('it still answers after all of that', async () => {
		const { loop, enter, ask, host } = await open()
		for (const text of ['\0\0\0', 'GET', 'POST / HTTP/9.9\r\n\r\n'])
			await raw(loop.port, [text], 200)
		const cookie = await enter()
		expect((await ask([`Host: ${host}`, `Cookie: ${cookie}`])).status).toBe(200)
	})
})
describe('slow', () => {
	const quick = { limits: { headersMs: 300, requestMs: 600, lookMs: 100 } }
	test('header lines that never end', async () => {
		const { loop, host } = await open(quick)
		const began = Date.now()
		expect(
			read(await raw(loop.port, [`GET / HTTP/1.1\r\nHost: ${host}\r\nX: `], 5000)).status,
		).toBe(408)
		expect(Date.now() - began).toBeLessThan(3000)
	})
	test('a body that never ends', async () => {
		const { loop, enter, good, calls } = await open(quick)
		const text = await raw(
			loop.port,
			[
				`POST /call/x HTTP/1.1\r\n${good(await enter())
					.map((line) => `${line}\r\n`)
					.join('')}Content-Length: 50\r\n\r\n{`,
			],
			5000,
		)
		expect(text === '' || read(text).status >= 400).toBe(true)
		expect(calls).toEqual([])
	})
	test(
		'many that hold a connection and say nothing: those beyond the limit are turned away, ' +
			'and room comes back',
		async () => {
			const { loop, enter, host, ask } = await open({ limits: { ...quick.limits, connections: 8 } })
			const cookie = await enter()
			const held = Array.from({ length: 20 }, () => raw(loop.port, [], 4000))
			await new Promise((resolve) => setTimeout(resolve, 1500))
			expect((await ask([`Host: ${host}`, `Cookie: ${cookie}`])).status).toBe(200)
			await Promise.all(held)
		},
	)
})
