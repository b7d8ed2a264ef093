/**
 * Two warm workers that draw, encrypt and read pages. They do not keep the process alive; the
 * second one starts once the first is busy.
 */
import { getCompileCacheDir } from 'node:module'
import { availableParallelism } from 'node:os'
import { Worker } from 'node:worker_threads'
import { BadLogo } from '../../shared/engine/report/bad-logo.ts'
import { threadFile } from '../place.ts'
import type { Task, TaskAnswer, TaskResult } from './tasks.ts'
import { UnprintableText } from './unprintable.ts'
import { UnreadablePdf } from './unreadable.ts'

interface Waiting {
	resolve: (result: TaskResult) => void
	reject: (error: Error) => void
}
interface Lane {
	thread: Worker
	waiting: Map<number, Waiting>
}
const limitMs = 30_000
/**
 * How many tasks are done at once: more would only take turns, and each thread holds fonts of its
 * own.
 * @internal
 */
export const pdfLanes = Math.min(2, availableParallelism())
const lanes: Lane[] = []
/** Of what was made lately, in a thread. */
const youngMb = 64
let next = 0

function open(): Lane {
	const lane: Lane = {
		// a page leaves much behind that is soon gone: with room for it less time goes into clearing up
		thread: new Worker(threadFile('pdf'), {
			resourceLimits: { maxYoungGenerationSizeMb: youngMb },
			workerData: { compiled: getCompileCacheDir() },
		}),
		waiting: new Map(),
	}
	const { thread, waiting } = lane
	thread.on('message', (answer: TaskAnswer) => {
		const asked = waiting.get(answer.id)
		if (!asked) return
		waiting.delete(answer.id)
		if (waiting.size === 0) thread.unref()
		if (answer.ok) asked.resolve(answer.result)
		else asked.reject(errorOf(answer))
	})
	const gone = () => {
		if (lanes.includes(lane)) lanes.splice(lanes.indexOf(lane), 1)
		for (const asked of waiting.values())
			asked.reject(new Error('The page could not be made: its worker stopped. Try again.'))
		waiting.clear()
	}
	thread.on('error', gone)
	thread.on('exit', gone)
	lanes.push(lane)
	return lane
}
/** The error of the worker in this thread's own classes, so that a caller can tell them apart. */
function errorOf({ name, message }: { name: string; message: string }): Error {
	if (name === 'BadLogo') return new BadLogo(message)
	if (name === 'UnprintableText') return new UnprintableText(message)
	if (name === 'UnreadablePdf') return new UnreadablePdf(message)
	return new Error(`The page could not be made (${message}).`)
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
/**
 * Starts workers ahead of need: reading pdfmake and the fonts takes a while. @param tasks to come
 */
export function warmPdf(tasks = 1): void {
	while (lanes.length < Math.min(tasks, pdfLanes)) open().thread.unref()
}
/**
 * Has a worker do one task.
 * @throws the worker's own error; Error in plain words where the task failed or took over 30 s
 */
export async function inWorker(task: Task): Promise<TaskResult> {
	const lane = laneNow()
	lane.thread.ref()
	const id = next++
	return new Promise((resolve, reject) => {
		const timer = setTimeout(() => {
			lane.waiting.delete(id)
			reject(new Error('The page could not be made within 30 seconds. Try again.'))
			void lane.thread.terminate()
		}, limitMs)
		const done =
			<T>(act: (value: T) => void) =>
			(value: T) => {
				clearTimeout(timer)
				act(value)
			}
		lane.waiting.set(id, { resolve: done(resolve), reject: done(reject) })
		lane.thread.postMessage({ id, task })
	})
}
