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
export const changedSince: readonly IntendedChange[] = [
	{ of: ['0.1.0'], where: /^(preview|merged) \/ counts \/ (before|after)$/, because: 'this version begins its own work in records of 0.1.0 with one record, which tells by whose key it signs' },
]
