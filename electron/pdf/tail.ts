/** The last page of a text: whether so little stands on it that it should not stand alone. */
import type { Node } from './look.ts'
import type { Page } from './page.ts'
import type { Stands } from './print/print.ts'

/** How much of a last page must be filled, of the height of its text (own choice). */
const leastFilled = 0.2
/** No page ends so high up that most of it stays empty, of the height of its text (own choice). */
const leastBefore = 0.35

/** The parts of the text in order, without sheets of their own. */
const flowOf = (content: readonly Node[]): Node[] =>
	content.flatMap((node) => {
		if (node.section === undefined) return [node]
		return node.isSheet === true ? [] : (node.section as Node[])
	})
/** Everything that a part holds learns which part that is. */
function place(held: unknown, at: number): void {
	if (Array.isArray(held)) for (const one of held) place(one, at)
	else if (held !== null && typeof held === 'object') {
		const node = held as Node
		node.place = at
		for (const inner of [node.stack, node.columns, node.ul, node.ol]) place(inner, at)
		place((node.table as { body?: unknown } | undefined)?.body, at)
	}
}
/** Before it is laid out. @param endBefore the part that a page ends before, if any */
export function placeParts(content: readonly Node[], endBefore: number | undefined): void {
	for (const [at, node] of flowOf(content).entries()) {
		place(node, at)
		if (at === endBefore) node.pageBreak = 'before'
	}
}
/**
 * What is wrong with the last page once the text is laid out: undefined where it is well filled, or
 * the only one. `endBefore` is the part that could go over to it, so that it holds a whole one.
 */
export function strandedOn(
	content: readonly Node[],
	stands: readonly Stands[],
	{ heightPt, margins }: Page,
): { endBefore: number | undefined } | undefined {
	const [, top, , bottom] = margins
	const text = heightPt - top - bottom
	const pages = [...new Set(stands.map(({ page }) => page))].sort((a, b) => a - b)
	const [pageBefore, lastPage] = pages.slice(-2)
	if (pageBefore === undefined || lastPage === undefined) return undefined
	const flow = flowOf(content)
	const onLast = stands.filter(({ page }) => page === lastPage)
	const filled = Math.max(...onLast.map((one) => one.bottom)) - top
	const isApart = flow[Math.min(...onLast.map((one) => one.place))]?.closes === true
	if (filled >= leastFilled * text && !isApart) return undefined
	const endBefore = flow.findLastIndex((node, at) => {
		const first = stands.find((one) => one.place === at)
		return (
			node.begins === true && first?.page === pageBefore && first.top - top >= leastBefore * text
		)
	})
	return { endBefore: endBefore < 0 ? undefined : endBefore }
}
