/** Which rows of the queue are chosen. Pure. */

export interface Choice {
	ids: ReadonlySet<string>
	/** the row that was pressed last: a range begins there */
	last: string | undefined
}
export const nothingChosen: Choice = { ids: new Set(), last: undefined }

interface Press {
	id: string
	/** every row from the last one pressed to this one, as with Shift */
	isRange: boolean
}
/** From one row to another in the order shown, both with them. */
function between(shown: readonly string[], from: string, to: string): string[] {
	const ends = [shown.indexOf(from), shown.indexOf(to)].sort((left, right) => left - right)
	const [first = -1, last = -1] = ends
	return first < 0 ? [to] : shown.slice(first, last + 1)
}
/** After a row was pressed: the whole range then stands as that row does. @param shown in order */
export function pressed(choice: Choice, shown: readonly string[], { id, isRange }: Press): Choice {
	const on = !choice.ids.has(id)
	const range = isRange && choice.last !== undefined ? between(shown, choice.last, id) : [id]
	const ids = new Set(choice.ids)
	for (const one of range) {
		if (on) ids.add(one)
		else ids.delete(one)
	}
	return { ids, last: id }
}
/** All that are shown, or none of them; what is not shown stays as it is. */
export function allShown({ ids, last }: Choice, shown: readonly string[], on: boolean): Choice {
	const next = new Set(ids)
	for (const id of shown) {
		if (on) next.add(id)
		else next.delete(id)
	}
	return { ids: next, last }
}
