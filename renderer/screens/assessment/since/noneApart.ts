/** None and a trouble exclude each other: what was said last stands. Pure. */
export function noneApart<Term extends string>(
	before: readonly Term[],
	after: readonly Term[] | undefined,
): readonly Term[] | undefined {
	if (!after) return undefined
	const isNone = (term: Term) => term === 'none'
	const saysNone = after.some(isNone) && !before.some(isNone)
	return saysNone
		? after.filter(isNone)
		: after.filter((term) => !isNone(term) || after.length === 1)
}
