/** The last page of a text: whether so little stands on it that it should not stand alone. */
import type { Node } from './look.ts'
import type { Page } from './page.ts'

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
/** Ends a page before the part at that place; nothing where there is none. */
export function endPageBefore(content: readonly Node[], place: number | undefined): void {
	const node = place === undefined ? undefined : flowOf(content)[place]
	if (node) node.pageBreak = 'before'
}
/**
 * What is wrong with the last page once the text is laid out: undefined where it is well filled, or
 * the only one. `endBefore` is the part that could go over to it, so that it holds a whole one.
 * @param content of a definition that was laid out: pdfmake wrote into it where its parts stand
 */
export function strandedOn(
	content: readonly Node[],
	{ heightPt, margins }: Page,
): { endBefore: number | undefined } | undefined {
	const placed = flowOf(content).map((node) => ({ node, at: node.positions ?? [] }))
	const lastPage = Math.max(
		1,
		...placed.flatMap(({ at }) => at.map(({ pageNumber }) => pageNumber)),
	)
	const [, top, , bottom] = margins
	const text = heightPt - top - bottom
	const onLast = placed.filter(({ at }) => at.some(({ pageNumber }) => pageNumber === lastPage))
	const tops = onLast.flatMap(({ at }) =>
		at.flatMap((position) => (position.pageNumber === lastPage ? [position.top] : [])),
	)
	const isFilled = Math.max(0, ...tops) - top >= leastFilled * text
	const isApart = onLast[0]?.node.closes === true
	const pageBefore = earlierPage(placed, lastPage)
	if (pageBefore === undefined || (isFilled && !isApart)) return undefined
	const endBefore = placed.findLastIndex(
		({ node, at: [first] }) =>
			node.begins === true &&
			first?.pageNumber === pageBefore &&
			first.top - top >= leastBefore * text,
	)
	return { endBefore: endBefore < 0 ? undefined : endBefore }
}
/** The page of text before the last; a sheet between is none. */
function earlierPage(
	placed: readonly { at: readonly { pageNumber: number }[] }[],
	lastPage: number,
): number | undefined {
	const earlier = placed
		.flatMap(({ at }) => at.map(({ pageNumber }) => pageNumber))
		.filter((page) => page < lastPage)
	return earlier.length === 0 ? undefined : Math.max(...earlier)
}
