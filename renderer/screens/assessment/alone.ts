/** A term such as none that excludes the others of its list: what was said last stands. Pure. */
export function chosenNow<Term extends string>(
	alone: Term,
	before: readonly Term[],
	after: readonly Term[] | undefined,
): Term[] | undefined {
	if (!after) return undefined
	const isSaid = after.includes(alone) && !before.includes(alone)
	return isSaid ? [alone] : after.filter((term) => term !== alone || after.length === 1)
}
