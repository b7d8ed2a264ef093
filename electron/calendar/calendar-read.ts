/** A list read in its own thread and in bounded time. */
import { Worker } from 'node:worker_threads'
import type { ImportChoices, Incoming } from '../../shared/engine/season/preview.ts'
import { Refusal } from '../services/records/refusal.ts'
import type { ReaderMessage } from './calendar-worker.ts'

/** As many sessions as a season file holds. */
const mostSessions = 1500
const longestMs = 15_000
/** @throws Refusal naming the event where a list cannot be read in time */
export function readList(
	text: string,
	kind: 'ics' | 'csv',
	choices: ImportChoices,
	limitMs = longestMs,
): Promise<Incoming> {
	return new Promise((resolve, reject) => {
		const worker = new Worker(new URL('./calendar-worker.ts', import.meta.url))
		let at = ''
		const end = (act: () => void) => {
			clearTimeout(timer)
			void worker.terminate()
			act()
		}
		const timer = setTimeout(
			() =>
				end(() =>
					reject(
						new Refusal(
							`The list could not be read within ${limitMs / 1000} seconds. Nothing was ` +
								'changed. ' +
								`${at ? `It stopped at "${at}": take this event out, or enter it by hand.` : 'Export this season alone and read it again.'}`,
						),
					),
				),
			limitMs,
		)
		worker.on('message', (message: ReaderMessage) => {
			if ('at' in message) {
				at = message.at
				return
			}
			const { incoming } = message
			const many = incoming.sessions.length > mostSessions
			end(() =>
				resolve(
					many
						? {
								...incoming,
								sessions: [],
								problems: [
									...incoming.problems,
									{
										where: 'file',
										says:
											'The list holds too many sessions within the season, given ' +
											`${incoming.sessions.length}, allowed: at most ${mostSessions}. Nothing ` +
											'of it is taken over: export fewer calendars, or a shorter time.',
									},
								],
							}
						: incoming,
				),
			)
		})
		worker.on('error', (error) =>
			end(() =>
				reject(
					new Refusal(
						`The list could not be read (${error.message.slice(0, 100)}). Nothing was changed. ` +
							'Export it again.',
					),
				),
			),
		)
		worker.postMessage({ text, kind, choices })
	})
}
