/** Document to PDF bytes, in a warm worker that does not keep the process alive. */
import { Worker } from 'node:worker_threads'
import type { LwDocument } from '../../shared/report/document.ts'
import { BadLogo } from '../../shared/report/logo.ts'
import { UnprintableText } from './glyphs.ts'

interface Waiting { resolve: (bytes: Uint8Array) => void; reject: (error: Error) => void }
const limitMs = 30_000
const waiting = new Map<number, Waiting>()
let worker: Worker | undefined
let next = 0

function warm(): Worker {
	if (worker) return worker
	const started = new Worker(new URL('./worker.ts', import.meta.url))
	started.on('message', (answer: { id: number; bytes?: Uint8Array; name?: string; message?: string }) => {
		const one = waiting.get(answer.id)
		if (!one) return
		waiting.delete(answer.id)
		if (waiting.size === 0) started.unref()
		if (answer.bytes) one.resolve(answer.bytes)
		else if (answer.name === 'BadLogo') one.reject(new BadLogo(answer.message))
		else one.reject(answer.name === 'UnprintableText' ? new UnprintableText(answer.message) : new Error(`The page could not be drawn (${answer.message}).`))
	})
	const gone = () => {
		if (worker === started) worker = undefined
		for (const one of waiting.values()) one.reject(new Error('The page could not be drawn: its worker stopped. Try again.'))
		waiting.clear()
	}
	started.on('error', gone)
	started.on('exit', gone)
	worker = started
	return started
}
/** Fewest characters of a password for a copy that is sent. A choice of this program. */
export const leastPassword = 8
/**
 * @param options.password makes a copy that opens by it only (AES-256), printing allowed; without it the same document gives the same bytes
 * @throws UnprintableText where a character is in no font; Error in plain words where the password is too short, drawing failed or took over 30 s
 */
export async function renderPdf(document: LwDocument, { password }: { password?: string } = {}): Promise<Uint8Array> {
	if (password !== undefined && password.length < leastPassword) throw new RangeError(`The password has ${password.length} characters; a copy needs at least ${leastPassword}.`)
	const thread = warm()
	thread.ref()
	const id = next++
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => {
			waiting.delete(id)
			reject(new Error('The page could not be drawn within 30 seconds. Try again.'))
			void thread.terminate()
		}, limitMs)
		const done = <T>(act: (value: T) => void) => (value: T) => { clearTimeout(timer); act(value) }
		waiting.set(id, { resolve: done(resolve), reject: done(reject) })
		thread.postMessage({ id, document, ...(password === undefined ? {} : { password }) })
	})
}
