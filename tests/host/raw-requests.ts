import { mkdtempSync, writeFileSync } from 'node:fs'
import { connect } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach } from 'vitest'
import type { App } from '../../electron/app.ts'
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
export function raw(port: number, chunks: (string | Buffer)[], waitMs = 1500): Promise<string> {
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
export function read(text: string): Reply {
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
export async function open({ call, ...options }: LoopbackOptions & { call?: App['call'] } = {}) {
	const calls: [string, unknown][] = []
	const app: App = {
		call: async (name, input) => {
			calls.push([name, input])
			return call ? call(name, input) : { ok: true, value: 'answered' }
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
