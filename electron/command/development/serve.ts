/**
 * `npm run dev`: the demo with hot screens. A screen is reloaded as it is saved; a file of the host
 * or of shared/ restarts the host, on the same records.
 * `--no-window` prints the address only.
 */
import { mkdtempSync, rmSync } from 'node:fs'
import { createServer, type IncomingMessage, type ServerResponse } from 'node:http'
import type { AddressInfo } from 'node:net'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { findBrowser, hasDisplay, openAppWindow } from '../../loopback/browser.ts'
import { RestartingHost } from './restarting-host.ts'
import { LiveScreens } from './screens.ts'

/** Several files saved together are one change. */
const settleMs = 150
const tell = (text: string) => process.stdout.write(`dev: ${text}\n`)

const folder = mkdtempSync(join(tmpdir(), 'lastwright-dev-'))
const host = new RestartingHost(folder, tell)
let screens: LiveScreens | undefined
let address = ''

async function take(request: IncomingMessage, response: ServerResponse): Promise<void> {
	const parts: Buffer[] = []
	for await (const part of request) parts.push(part)
	const name = (request.url ?? '').slice('/call/'.length)
	const result = await host.call(name, JSON.parse(Buffer.concat(parts).toString('utf8')))
	response.writeHead(200, { 'content-type': 'application/json' }).end(JSON.stringify(result))
}
async function answer(request: IncomingMessage, response: ServerResponse): Promise<void> {
	// a page of another site that resolves its name to this PC still sends its own Host
	if (`http://${request.headers.host}` !== address) {
		response.writeHead(403).end()
	} else if (request.method !== 'POST') {
		await screens?.answer(request, response)
	} else if (request.headers.origin !== address) {
		response.writeHead(403).end()
	} else if (request.url?.startsWith('/call/')) {
		await take(request, response)
	} else response.writeHead(204).end()
}
const server = createServer((request, response) => {
	answer(request, response).catch((error) => {
		tell(error instanceof Error ? error.message : String(error))
		if (!response.headersSent) response.writeHead(500)
		response.end()
	})
})
await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve))
address = `http://127.0.0.1:${(server.address() as AddressInfo).port}`
screens = await LiveScreens.open(server)

let settling: NodeJS.Timeout | undefined
screens.onChange(['electron', 'shared', 'assets/demo'], (file) => {
	clearTimeout(settling)
	settling = setTimeout(() => {
		tell(`${file} was saved: the host starts again.`)
		void host.restart()
	}, settleMs)
})
void host.restart()

const browser = process.argv.includes('--no-window') || !hasDisplay() ? undefined : findBrowser()
const window = browser ? openAppWindow(browser, address) : undefined
tell(`an invented clinic, thrown away at the end: ${address}`)

async function end(): Promise<void> {
	window?.kill()
	await host.stop()
	await screens?.close()
	server.close()
	server.closeAllConnections()
	rmSync(folder, { recursive: true, force: true })
	process.exit(0)
}
window?.once('exit', () => void end())
process.once('SIGINT', () => void end())
process.once('SIGTERM', () => void end())
