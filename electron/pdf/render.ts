/**
 * Document to PDF bytes, in two warm workers that do not keep the process alive. The second one
 * starts once the first is busy.
 */
import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import { present } from '../../shared/engine/plain/present.ts'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import type { LwDocument } from '../../shared/engine/report/document.ts'
import { UnprintableText } from './unprintable.ts'

interface Waiting {
	resolve: (bytes: Uint8Array) => void
	reject: (error: Error) => void
}
/** The page, or the name and words of the error. */
interface Answer {
	id: number
	bytes?: Uint8Array
	name?: string
	message?: string
}
interface Lane {
	thread: Worker
	waiting: Map<number, Waiting>
}
const limitMs = 30_000
/**
 * How many pages are drawn at once: more would only take turns, and each thread holds fonts of its
 * own.
 * @internal
 */
export const pdfLanes = Math.min(2, availableParallelism())
const lanes: Lane[] = []
let next = 0

function open(): Lane {
	const lane: Lane = {
		thread: new Worker(new URL('./worker.ts', import.meta.url)),
		waiting: new Map(),
	}
	const { thread, waiting } = lane
	thread.on('message', (answer: Answer) => {
		const asked = waiting.get(answer.id)
		if (!asked) return
		waiting.delete(answer.id)
		if (waiting.size === 0) thread.unref()
		if (answer.bytes) asked.resolve(answer.bytes)
		else asked.reject(errorOf(answer))
	})
	const gone = () => {
		if (lanes.includes(lane)) lanes.splice(lanes.indexOf(lane), 1)
		for (const asked of waiting.values())
			asked.reject(new Error('The page could not be drawn: its worker stopped. Try again.'))
		waiting.clear()
	}
	thread.on('error', gone)
	thread.on('exit', gone)
	lanes.push(lane)
	return lane
}
/** The error of the worker in this thread's own classes, so that a caller can tell them apart. */
function errorOf({ name, message }: Answer): Error {
	if (name === 'BadLogo') return new BadLogo(message)
	if (name === 'UnprintableText') return new UnprintableText(message)
	return new Error(`The page could not be drawn (${message}).`)
}
/**
 * A free worker, a new one where all are busy and there is room, else the one with the shortest
 * queue.
 */
function laneNow(): Lane {
	const [shortest] = lanes.toSorted((a, b) => a.waiting.size - b.waiting.size)
	if (!shortest) return open()
	return shortest.waiting.size > 0 && lanes.length < pdfLanes ? open() : shortest
}
/** Starts the first worker ahead of need: reading pdfmake and the fonts takes a while. */
export function warmPdf(): void {
	if (lanes.length === 0) open().thread.unref()
}
/** Fewest characters of a password for a copy that is sent. A choice of this program. */
const leastPassword = 8
/**
 * @param options.password makes a copy that opens by it only (AES-256), printing allowed; without
 * it the same document gives the same bytes
 * @param options.logoMustShow a logo that cannot be drawn is refused; else the page goes without it
 * @throws BadLogo where a logo that must show cannot; UnprintableText where a character is in no font; Error in plain words where the password
 * is too short, drawing failed or took over 30 s
 */
export async function renderPdf(
	document: LwDocument,
	{ password, logoMustShow }: { password?: string; logoMustShow?: boolean } = {},
): Promise<Uint8Array> {
	if (password !== undefined && password.length < leastPassword)
		throw new RangeError(
			`The password has ${password.length} characters; a copy needs at least ${leastPassword}.`,
		)
	const lane = laneNow()
	lane.thread.ref()
	const id = next++
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => {
			lane.waiting.delete(id)
			reject(new Error('The page could not be drawn within 30 seconds. Try again.'))
			void lane.thread.terminate()
		}, limitMs)
		const done =
			<T>(act: (value: T) => void) =>
			(value: T) => {
				clearTimeout(timer)
				act(value)
			}
		lane.waiting.set(id, { resolve: done(resolve), reject: done(reject) })
		lane.thread.postMessage(present({ id, document, password, logoMustShow }))
	})
}
