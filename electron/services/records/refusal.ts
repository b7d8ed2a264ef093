import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'
import type { Said } from '../../../shared/engine/words/stated.ts'
import type { Statement } from '../../../shared/engine/words/statement.ts'

/** One entry that a refusal is about: its path, and what is wrong with it. */
interface RefusedEntry {
	path: string
	message: string
	/** what the message says, where it is stated by a code */
	code?: string
}
/**
 * A refusal: a code that the program goes by, and words for the person; anything else thrown is a
 * fault of ours.
 */
export class Refusal extends Error {
	readonly code: RefusalCode
	/** the entries it is about, each with its path and what is wrong with it */
	readonly problems: RefusedEntry[] | undefined
	/** what its words are filled in with, where they are a statement */
	readonly said: Said | undefined
	/** @param words the sentence, or the statement that makes it */
	constructor(code: RefusalCode, words: string | Statement, problems?: RefusedEntry[]) {
		super(typeof words === 'string' ? words : words.says)
		this.code = code
		this.problems = problems
		this.said =
			typeof words === 'string' ? undefined : { code: words.code, params: { ...words.params } }
	}
}
/** What is wrong with an entry, as a refusal carries it. */
export const refusedEntry = (path: string, { code, says }: Statement): RefusedEntry => ({
	path,
	message: says,
	code,
})
