import type { RefusalCode } from '../../shared/desk/workplace/refusal.ts'

/** A pack that cannot be used: why, and in words. */
export class PackRefused extends Error {
	readonly why: RefusalCode
	constructor(words: string, why: RefusalCode = 'outreach.pack-refused') {
		super(words)
		this.why = why
	}
}
