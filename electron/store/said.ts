import type { RefusalCode } from '../../shared/desk/workplace/refusal.ts'

/** A failure of the records whose words are for the person, wherever it comes out. */
export class Said extends Error {
	readonly why: RefusalCode
	constructor(
		words: string,
		{ why = 'records.store', ...options }: ErrorOptions & { why?: RefusalCode } = {},
	) {
		super(words, options)
		this.why = why
	}
}
