/**
 * A browser that prints pages to PDF, by its own protocol over a pipe and nothing between: two pages
 * at a time in one browser. A process of its own: `node browser-prints.ts BROWSER FOLDER PAGE.html...`
 */
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { basename, join } from 'node:path'
import type { Readable, Writable } from 'node:stream'
import { pathToFileURL } from 'node:url'

const [browser = '', folder = '', ...files] = process.argv.slice(2)
const atOnce = 2
const profile = mkdtempSync(join(tmpdir(), 'lastwright-prints-'))
const child = spawn(
	browser,
	[
		...['--headless', '--no-sandbox', '--disable-gpu', '--no-first-run', '--disable-extensions'],
		...['--disable-background-networking', '--disable-component-update', '--disable-sync'],
		...[`--user-data-dir=${profile}`, '--remote-debugging-pipe'],
	],
	{ stdio: ['ignore', 'ignore', 'ignore', 'pipe', 'pipe'] },
)
const to = child.stdio[3] as Writable
const from = child.stdio[4] as Readable

interface Told {
	id?: number
	method?: string
	sessionId?: string
	result?: Record<string, string>
	error?: { message: string }
}
const answers = new Map<number, (told: Told) => void>()
const loads = new Map<string, () => void>()
function hear(told: Told): void {
	if (told.id !== undefined) answers.get(told.id)?.(told)
	else if (told.method === 'Page.loadEventFired') loads.get(told.sessionId ?? '')?.()
}
let held: Buffer[] = []
from.on('data', (chunk: Buffer) => {
	let begin = 0
	for (let end = chunk.indexOf(0); end >= 0; end = chunk.indexOf(0, begin)) {
		const text = Buffer.concat([...held, chunk.subarray(begin, end)]).toString()
		held = []
		begin = end + 1
		hear(JSON.parse(text) as Told)
	}
	held.push(chunk.subarray(begin))
})
let next = 0
/** @throws Error with the browser's own words */
async function ask(method: string, params: object = {}, sessionId?: string) {
	const id = next++
	const told = await new Promise<Told>((resolve) => {
		answers.set(id, resolve)
		to.write(`${JSON.stringify({ id, method, params, sessionId })}\0`)
	})
	answers.delete(id)
	if (told.error) throw new Error(`${method}: ${told.error.message}`)
	return told.result ?? {}
}
const waiting = [...files]
async function lane(): Promise<void> {
	const { targetId } = await ask('Target.createTarget', { url: 'about:blank' })
	const { sessionId = '' } = await ask('Target.attachToTarget', { targetId, flatten: true })
	await ask('Page.enable', {}, sessionId)
	for (let file = waiting.shift(); file !== undefined; file = waiting.shift()) {
		const loaded = new Promise<void>((resolve) => loads.set(sessionId, resolve))
		await ask('Page.navigate', { url: pathToFileURL(file).href }, sessionId)
		await loaded
		const printed = await ask(
			'Page.printToPDF',
			{ printBackground: true, preferCSSPageSize: true, paperWidth: 8.27, paperHeight: 11.69 },
			sessionId,
		)
		const name = basename(file).replace(/\.html$/, '.pdf')
		writeFileSync(join(folder, name), Buffer.from(printed.data ?? '', 'base64'))
	}
}
await Promise.all(Array.from({ length: atOnce }, lane))
child.kill('SIGKILL')
child.once('exit', () => rmSync(profile, { recursive: true, force: true }))
