/** Other users' processes at the loopback server, other ports, and two programs in one browser. */
import { type ChildProcess, spawn } from 'node:child_process'
import { once } from 'node:events'
import { connect, createServer, type Server, type Socket } from 'node:net'
import { afterEach, describe, expect, it, test } from 'vitest'
import { type Ends, lookAround, peerIn } from '../../electron/loopback/peer.ts'
import { open, raw, read } from './raw-requests.ts'

const children: ChildProcess[] = []
const sockets: Socket[] = []
const servers: Server[] = []
afterEach(() => {
	for (const child of children.splice(0)) child.kill('SIGKILL')
	for (const socket of sockets.splice(0)) socket.destroy()
	for (const server of servers.splice(0)) server.close()
})
const isLinux = process.platform === 'linux'
/** Only root may start a program of another user. */
const isRoot = process.getuid?.() === 0
const nobody = 65_534

const connected = `
	const { connect } = require('node:net')
	const [port, host, many, bytes] = process.argv.slice(1)
	let answer = ''
	for (let at = 0; at < Number(many); at++) {
		const socket = connect(Number(port), host, () => socket.write(bytes))
		socket.on('data', (part) => { answer += part })
		socket.on('error', () => {})
		socket.on('close', () => { if (Number(many) === 1) process.stdout.write(answer || 'closed') })
		if (at === Number(many) - 1) socket.on('connect', () => Number(many) > 1 && process.stdout.write('there'))
	}
	setInterval(() => {}, 1000)`
/** What a process of a user prints that connects so many times and sends these bytes at once. */
async function from(
	uid: number,
	port: number,
	{ host = '127.0.0.1', many = 1, bytes = '' } = {},
): Promise<string> {
	const child = spawn(process.execPath, ['-e', connected, `${port}`, host, `${many}`, bytes], {
		uid,
		cwd: '/',
	})
	children.push(child)
	return String((await once(child.stdout, 'data'))[0])
}
const hosts = ['127.0.0.1', '::ffff:127.0.0.1']

describe.skipIf(!isLinux || !isRoot)("another user's real process (needs root on Linux)", () => {
	test.each(hosts)(
		'connected to %s is refused with the right cookie, and ours is not',
		async (to) => {
			const { loop, enter, host, calls } = await open()
			const bytes =
				`POST /call/players.search HTTP/1.1\r\nHost: ${host}\r\nCookie: ${await enter()}\r\n` +
				`Origin: http://${host}\r\nContent-Type: application/json\r\nContent-Length: 2\r\n` +
				'Connection: close\r\n\r\n{}'
			const strange = read(await from(nobody, loop.port, { host: to, bytes }))
			expect([strange.status, strange.text]).toEqual([
				403,
				expect.stringContaining('another user of this PC'),
			])
			expect(calls).toEqual([])
			expect(read(await from(0, loop.port, { host: to, bytes })).status).toBe(200)
			expect(calls).toHaveLength(1)
		},
	)
	test.each(hosts)('200 idle connections of it to %s take no place of ours', async (to) => {
		const { loop, enter, ask, host } = await open({ limits: { connections: 8 } })
		const cookie = await enter()
		await from(nobody, loop.port, { host: to, many: 200 })
		for (let again = 0; again < 20; again++)
			expect((await ask([`Host: ${host}`, `Cookie: ${cookie}`])).status).toBe(200)
	})
	test('a token that it has got hold of is not used up by it', async () => {
		const { loop, host, token, ask } = await open()
		const bytes = `GET ${token} HTTP/1.1\r\nHost: ${host}\r\nConnection: close\r\n\r\n`
		expect(read(await from(nobody, loop.port, { bytes })).status).toBe(403)
		expect((await ask([`Host: ${host}`], '', 'GET', token)).status).toBe(303)
	})
})
test('nothing that another user sends reaches the reader of requests', async () => {
	const { loop, calls } = await open({ peer: () => (process.getuid?.() ?? 0) + 1 })
	const answers = await Promise.all(Array.from({ length: 40 }, () => raw(loop.port, ['no HTTP'])))
	// what is not HTTP would be answered with 400 by the reader
	for (const answer of answers) expect(['', 403]).toContain(answer && read(answer).status)
	expect(answers.some((answer) => answer.includes('another user of this PC'))).toBe(
		process.getuid !== undefined,
	)
	expect(calls).toEqual([])
})
test('a connection whose process is gone is cut', async () => {
	const { loop } = await open({ peer: () => 'gone' })
	expect(await raw(loop.port, ['GET / HTTP/1.1\r\n\r\n'])).toBe('')
})
test('an answer that nobody takes is cut; a call that works long is not', async () => {
	const working = Promise.withResolvers<void>()
	const { loop, enter, good, post } = await open({
		limits: { quietMs: 300 },
		call: async () => {
			await working.promise
			return { ok: true, value: 'at last' }
		},
	})
	const cookie = await enter()
	const silent = connect(loop.port, '127.0.0.1')
	sockets.push(silent)
	const long = post(good(cookie), '{}')
	// cut while the long call, which is as quiet, goes on
	await once(silent, 'close')
	working.resolve()
	expect((await long).text).toContain('at last')
})

describe('the table of connections', () => {
	const head = '  sl  local_address rem_address   st tx_queue rx_queue tr tm->when retrnsmt   uid\n'
	const rest = (uid: number, inode: number) =>
		`01 00000000:00000000 00:00000000 00000000  ${uid} 0 ${inode}\n`
	const ends = {
		remoteAddress: '127.0.0.1',
		remotePort: 0xc001,
		localAddress: '127.0.0.1',
		localPort: 0x1f90,
	}
	const six = '0000000000000000FFFF00000100007F'
	const server = `   0: 0100007F:1F90 0100007F:C001 ${rest(1000, 7)}`
	const cases: [string, string, Ends, unknown][] = [
		['its user', `${server}   1: 0100007F:C001 0100007F:1F90 ${rest(1001, 8)}`, ends, 1001],
		[
			'its user, held by IPv6',
			`${server}   1: ${six}:C001 ${six}:1F90 ${rest(1001, 8)}`,
			ends,
			1001,
		],
		[
			'its user, where our end is written as IPv6',
			`${server}   1: 0100007F:C001 0100007F:1F90 ${rest(1001, 8)}`,
			{ ...ends, remoteAddress: '::ffff:127.0.0.1', localAddress: '::ffff:127.0.0.1' },
			1001,
		],
		['one let go of', `${server}   1: 0100007F:C001 0100007F:1F90 ${rest(0, 0)}`, ends, 'gone'],
		['only our end', server, ends, 'gone'],
		['another port', server, { ...ends, remotePort: 0xc002 }, undefined],
		['no address', server, {}, undefined],
		[
			'an IPv6 address that only ends alike',
			`   1: 2000000000000000FFFF00000100007F:C001 ${six}:1F90 ${rest(5, 8)}`,
			ends,
			undefined,
		],
	]
	it.each(cases)('tells %s', (_, table, of, told) => {
		expect(peerIn(head + table, of)).toBe(told)
	})
	test('is looked at again where a line is missing once', () => {
		const whole = `${server}   1: 0100007F:C001 0100007F:1F90 ${rest(1001, 8)}`
		const looks = [server, '', whole]
		expect(lookAround(() => looks.shift() ?? '')(ends)).toBe(1001)
	})
	test.skipIf(!isLinux)('of this PC tells who we are, by either kind of socket', async () => {
		const server = createServer().listen(0, '127.0.0.1')
		servers.push(server)
		await once(server, 'listening')
		const { port } = server.address() as { port: number }
		for (const to of hosts) {
			const accepted = once(server, 'connection')
			const socket = connect(port, to)
			sockets.push(socket)
			const [other] = await accepted
			sockets.push(other)
			expect(lookAround()(other), to).toBe(process.getuid?.())
		}
	})
})
describe('two programs in one browser', () => {
	/** What a browser keeps for a host, whatever the port. */
	const jar = new Map<string, string>()
	const keep = (header: string | undefined) => {
		const [name = '', value = ''] = (header ?? '').split(';')[0]!.split(/=(.*)/s)
		jar.set(name, value)
	}
	const cookies = () => [...jar].map(([name, value]) => `${name}=${value}`).join('; ')
	test('each knows its own cookie, and neither lets the other in', async () => {
		const [first, second] = [await open(), await open()]
		const enter = async ({ ask, host, token }: typeof first) =>
			keep(
				(await ask([`Host: ${host}`, `Cookie: ${cookies()}`], '', 'GET', token)).headers.get(
					'set-cookie',
				),
			)
		await enter(first)
		await enter(second)
		for (const { ask, host } of [first, second, first])
			expect((await ask([`Host: ${host}`, `Cookie: ${cookies()}`])).status).toBe(200)
		const [own, other] = [...jar]
		for (const stolen of [
			`${own![0]}=${own![1]}`,
			`${other![0]}=${own![1]}`,
			`lastwright=${other![1]}`,
		])
			expect((await second.ask([`Host: ${second.host}`, `Cookie: ${stolen}`])).status).toBe(403)
	})
	test('cookies of many earlier starts never fill the header: the oldest are taken back', async () => {
		const { ask, host, token } = await open()
		const old = Array.from(
			{ length: 100 },
			(_, at) => `lastwright-${20_000 + at}=${'x'.repeat(43)}`,
		)
		const { headers } = await ask([`Host: ${host}`, `Cookie: ${old.join('; ')}`], '', 'GET', token)
		expect(headers.get('set-cookie')).toMatch(
			/^lastwright-\d+=[\w-]{43}; HttpOnly; SameSite=Strict/,
		)
		const all = await ask([`Host: ${host}`], '', 'GET', '/')
		expect(all.status).toBe(403)
	})
})
