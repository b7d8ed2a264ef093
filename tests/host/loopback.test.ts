/** The loopback server against whoever else runs on this PC: pages, users, rebound names. */
import { execFile } from 'node:child_process'
import { mkdtempSync, readFileSync, statSync } from 'node:fs'
import { connect } from 'node:net'
import { networkInterfaces, tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { describe, expect, it, test } from 'vitest'
import { writeDoor } from '../../electron/loopback/browser.ts'
import { open, read } from './raw-requests.ts'

test('the one who has the address gets in, calls and is answered', async () => {
	const { enter, post, good, ask, host, calls } = await open()
	const cookie = await enter()
	expect(cookie).toMatch(/^lastwright-\d+=[\w-]{43}$/)
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
test(
	'a token that came from a file or another site sets the cookie and lets the page ' +
		'itself go on',
	async () => {
		const { ask, host, token } = await open()
		const reply = await ask([`Host: ${host}`, 'Sec-Fetch-Site: cross-site'], '', 'GET', token)
		expect([reply.status, reply.headers.get('location')]).toEqual([200, undefined])
		expect(reply.headers.get('set-cookie')).toContain('HttpOnly; SameSite=Strict')
		expect(reply.text).toContain('http-equiv="refresh"')
	},
)
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
		.map((address) => address!.address)
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
	test(
		'is refused even with token and cookie, by what the system says of the ' + 'connection',
		async () => {
			const { ask, host, token, calls } = await open({ peer: () => (process.getuid?.() ?? 0) + 1 })
			const reply = await ask([`Host: ${host}`], '', 'GET', token)
			if (process.getuid)
				expect([reply.status, reply.text]).toEqual([
					403,
					expect.stringContaining('another user of this PC'),
				])
			expect(calls).toEqual([])
		},
	)
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
