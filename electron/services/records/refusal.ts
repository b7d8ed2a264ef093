import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'

/**
 * A refusal: a code that the program goes by, and words for the person; anything else thrown is a
 * fault of ours.
 */
export class Refusal extends Error {
	readonly code: RefusalCode
	/** the entries it is about, each with its path and what is wrong with it */
	readonly problems: { path: string; message: string }[] | undefined
	constructor(code: RefusalCode, words: string, problems?: { path: string; message: string }[]) {
		super(words)
		this.code = code
		this.problems = problems
	}
}
