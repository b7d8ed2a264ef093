/** Document to PDF bytes, in a warm worker that does not keep the process alive. */
import { Worker } from 'node:worker_threads'
import type { LwDocument } from '../../shared/report/document.ts'
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
/** @throws UnprintableText where a character is in no font; Error in plain words where drawing failed or took over 30 s */
export function renderPdf(document: LwDocument): Promise<Uint8Array> {
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
		thread.postMessage({ id, document })
	})
}
