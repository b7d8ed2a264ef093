/** A list read in its own thread and in bounded time. */
import { Worker } from 'node:worker_threads'
import { present } from '../../shared/engine/plain/present.ts'
import type { ImportChoices, Incoming } from '../../shared/engine/season/preview.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { threadFile } from '../place.ts'
import { Refusal } from '../services/records/refusal.ts'
import { flawIn } from './reason.ts'
import type { ReaderMessage } from './worker.ts'

/** As many sessions as a season file holds. */
const mostSessions = 1500
const longestMs = 15_000

/** A list of more sessions than a season holds is refused as a whole. */
function bounded(incoming: Incoming): Incoming {
	const count = incoming.sessions.length
	if (count <= mostSessions) return incoming
	const said = state('season.list-too-many', { given: count, most: mostSessions })
	return { ...incoming, sessions: [], problems: [...incoming.problems, said] }
}
/** @param at what was being read when the time was over, where that is known */
const tooSlow = (limitMs: number, at: string | undefined): Refusal =>
	new Refusal(
		'calendar.list-cannot-be-read',
		state('season.list-too-slow', { seconds: limitMs / 1000, ...present({ at }) }),
	)
const unreadable = (error: Error): Refusal =>
	new Refusal(
		'calendar.list-cannot-be-read',
		state('season.list-unreadable', { flaw: flawIn(error) }),
	)

/** @throws Refusal naming the event where a list cannot be read in time */
export function readList(
	text: string,
	kind: 'ics' | 'csv',
	choices: ImportChoices,
	limitMs = longestMs,
): Promise<Incoming> {
	return new Promise((resolve, reject) => {
		const worker = new Worker(threadFile('calendar'))
		let at: string | undefined
		const end = (act: () => void) => {
			clearTimeout(timer)
			void worker.terminate()
			act()
		}
		const late = () => end(() => reject(tooSlow(limitMs, at)))
		let timer: NodeJS.Timeout | undefined
		worker.on('message', (message: ReaderMessage) => {
			// loading the reader is no part of reading the list
			if ('ready' in message) timer = setTimeout(late, limitMs)
			else if ('at' in message) at = message.at
			else end(() => resolve(bounded(message.incoming)))
		})
		worker.on('error', (error) => end(() => reject(unreadable(error))))
		worker.postMessage({ text, kind, choices })
	})
}
