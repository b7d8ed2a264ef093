/**
 * Reads one list in a thread of its own: a rule without an end, or a file of any size, holds up
 * nothing else.
 */
import { parentPort } from 'node:worker_threads'
import type { ImportChoices, Incoming } from '../../shared/engine/season/preview.ts'
import { readCsv } from './csv.ts'
import { readCalendar } from './read.ts'

/** ready: the reader is loaded, and its time begins */
export type ReaderMessage = { ready: true } | { at: string } | { incoming: Incoming }
const post = (message: ReaderMessage): void => parentPort?.postMessage(message)
parentPort?.once(
	'message',
	({ text, kind, choices }: { text: string; kind: 'ics' | 'csv'; choices: ImportChoices }) => {
		post({
			incoming:
				kind === 'ics' ? readCalendar(text, choices, (at) => post({ at })) : readCsv(text, choices),
		})
	},
)
post({ ready: true })
