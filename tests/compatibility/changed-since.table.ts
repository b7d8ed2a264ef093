/**
 * What later versions show otherwise on purpose, each with its reason. Nothing that was recorded may
 * stand here: words and what is worked out anew only.
 */
interface IntendedChange {
	/** versions that wrote the fixture */
	of: readonly string[]
	/** the answer and the path in it */
	where: RegExp
	because: string
}
export const changedSince: readonly IntendedChange[] = []
