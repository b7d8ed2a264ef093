/** A list read in its own thread and in bounded time. */
import { Worker } from 'node:worker_threads'
import type { ImportChoices, Incoming } from '../../shared/engine/season/preview.ts'
import { Refusal } from '../services/records/refusal.ts'
import { reasonOf } from './reason.ts'
import type { ReaderMessage } from './worker.ts'

/** As many sessions as a season file holds. */
const mostSessions = 1500
const longestMs = 15_000

/** A list of more sessions than a season holds is refused as a whole. */
function bounded(incoming: Incoming): Incoming {
	const count = incoming.sessions.length
	if (count <= mostSessions) return incoming
	const says =
		`The list holds too many sessions within the season, given ${count}, allowed: at most ` +
		`${mostSessions}. Nothing of it is taken over: export fewer calendars, or a shorter time.`
	return {
		...incoming,
		sessions: [],
		problems: [...incoming.problems, { where: 'file', says }],
	}
}
/** @param at what was being read when the time was over, where that is known */
function tooSlow(limitMs: number, at: string): Refusal {
	const remedy = at
		? `It stopped at "${at}": take this event out, or enter it by hand.`
		: 'Export this season alone and read it again.'
	return new Refusal(
		'calendar.list-cannot-be-read',
		`The list could not be read within ${limitMs / 1000} seconds. Nothing was changed. ${remedy}`,
	)
}
const unreadable = (error: Error): Refusal =>
	new Refusal(
		'calendar.list-cannot-be-read',
		`The list could not be read (${reasonOf(error)}). Nothing was changed. Export it again.`,
	)

/** @throws Refusal naming the event where a list cannot be read in time */
export function readList(
	text: string,
	kind: 'ics' | 'csv',
	choices: ImportChoices,
	limitMs = longestMs,
): Promise<Incoming> {
	return new Promise((resolve, reject) => {
		const worker = new Worker(new URL('./worker.ts', import.meta.url))
		let at = ''
		const end = (act: () => void) => {
			clearTimeout(timer)
			void worker.terminate()
			act()
		}
		const timer = setTimeout(() => end(() => reject(tooSlow(limitMs, at))), limitMs)
		worker.on('message', (message: ReaderMessage) => {
			if ('at' in message) at = message.at
			else end(() => resolve(bounded(message.incoming)))
		})
		worker.on('error', (error) => end(() => reject(unreadable(error))))
		worker.postMessage({ text, kind, choices })
	})
}
