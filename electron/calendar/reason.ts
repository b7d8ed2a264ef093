/** What a person is told of a part of a list that cannot be read. */
import ICAL from 'ical.js'
import type { ListFlaw } from '../../shared/engine/words/en/season/lists.ts'

/** A refusal of one event, by what is wrong with it. */
export class Unreadable extends Error {
	readonly flaw: ListFlaw
	constructor(flaw: ListFlaw) {
		super(flaw.is)
		this.flaw = flaw
	}
}
const mostLetters = 100
type ParserError = new (message: string) => Error
const { ParserError } = ICAL.parse as unknown as { ParserError: ParserError }
/**
 * Why something cannot be read. Of a line that is not as the format has it the reader says what it
 * met; a fault in the program that reads says nothing of its own.
 */
export function flawIn(error: unknown): ListFlaw {
	if (error instanceof Unreadable) return error.flaw
	return error instanceof ParserError
		? { is: 'not-as-written', met: error.message.slice(0, mostLetters) }
		: { is: 'not-as-written' }
}
