import { describe, expect, it, test } from 'vitest'
import { open, raw, read } from './raw-requests.ts'

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
	test('a key that stands twice is named, and the call is not made', async () => {
		const { loop, enter, good, calls } = await open()
		const body = '{"player":{"sex":"male","sex":"female"}}'
		const text = await raw(loop.port, [
			`POST /call/x HTTP/1.1\r\n${good(await enter())
				.map((line) => `${line}\r\n`)
				.join('')}Content-Length: ${body.length}\r\nConnection: close\r\n\r\n${body}`,
		])
		expect([read(text).status, read(text).text]).toEqual([
			400,
			expect.stringContaining('player.sex: given twice'),
		])
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
			await expect
				.poll(async () => (await ask([`Host: ${host}`, `Cookie: ${cookie}`])).status)
				.toBe(200)
			await Promise.all(held)
		},
	)
})
