/** What the shell says and asks in dialogs of the system: words without anything of the records. */
import type { MessageBoxOptions } from 'electron'
import { reasonWords } from './crash.ts'

/** Title and words of a message that is only read. */
type ErrorWords = readonly [title: string, words: string]
/** The first button does nothing: it is that of Enter and of Escape. */
const staysFirst = { defaultId: 0, cancelId: 0, noLink: true } as const
const hasToClose = 'Lastwright has to close'

export const closing: ErrorWords = [
	hasToClose,
	'A fault in the program ended it. Your records are safe: every entry is kept as a draft ' +
		'within a second. Start Lastwright again.',
]
/** @param reason the runtime's word */
export const stoppedOften = (reason: string): ErrorWords => [
	hasToClose,
	`The screens stopped several times. ${reasonWords(reason)} Your records are safe. ` +
		'Restart the PC, then start Lastwright again.',
]
export const recordsShut = (error: unknown): ErrorWords => [
	'Lastwright cannot open the records',
	error instanceof Error ? error.message : 'The data folder could not be opened.',
]
export const outside = (link: string): MessageBoxOptions => ({
	type: 'question',
	message: 'Open this address in your browser?',
	detail: `${link}\n\nNothing of the records goes with it.`,
	buttons: ['Stay here', 'Open'],
	...staysFirst,
})
export const notAnswering: MessageBoxOptions = {
	type: 'warning',
	message: 'The screens do not answer',
	detail:
		'A large piece of work may still be running. Every entry is kept as a draft within a second.',
	buttons: ['Wait', 'Open the screens again'],
	...staysFirst,
}
export const leaving: MessageBoxOptions = {
	type: 'warning',
	message: 'Something on this page is not saved',
	detail: 'It is lost if Lastwright closes now.',
	buttons: ['Stay', 'Close without it'],
	...staysFirst,
}
