import type { Said } from '../../../shared/engine/words/stated.ts'
import type { Statement } from '../../../shared/engine/words/statement.ts'

/** One entry that a refusal is about: its path, and what is wrong with it. */
export interface RefusedEntry {
	path: string
	message: string
	/** what the message says, where it is stated by a code */
	code?: string
}
/** A refusal in words for the person; anything else thrown is a fault of ours. */
export class Refusal extends Error {
	/** the entries it is about, each with its path and what is wrong with it */
	readonly problems: RefusedEntry[] | undefined
	/** what it says, where it is stated by a code: nothing decides by its words */
	readonly said: Said | undefined
	constructor(told: string | Statement, problems?: RefusedEntry[]) {
		super(typeof told === 'string' ? told : told.says)
		this.problems = problems
		this.said =
			typeof told === 'string' ? undefined : { code: told.code, params: { ...told.params } }
	}
}
/** What is wrong with an entry, as a refusal carries it. */
export const refusedEntry = (path: string, { code, says }: Statement): RefusedEntry => ({
	path,
	message: says,
	code,
})
