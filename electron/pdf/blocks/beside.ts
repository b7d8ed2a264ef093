/** Two runs of blocks side by side. */
import type { Node } from '../look.ts'

/** Between the two, points. */
export const besideGap = 18

const inside = (held: unknown): unknown => {
	if (Array.isArray(held)) return held.map(inside)
	return held !== null && typeof held === 'object' ? torn(held as Node) : held
}
/**
 * A node that asks for no break and for no wholeness, nor anything in it: within what must not break
 * pdfmake drops what does, without a word.
 */
export function torn({ headlineLevel: _, unbreakable: __, ...node }: Node): Node {
	const { stack, columns, table } = node
	return {
		...node,
		...(stack !== undefined && { stack: inside(stack) }),
		...(columns !== undefined && { columns: inside(columns) }),
		...(table !== undefined && { table: inside(table) }),
	}
}
/** Both columns begin at one height, whatever room their first part has above it. */
function levelled([first, ...rest]: Node[]): Node[] {
	if (!first) return []
	if (!Array.isArray(first.margin)) return [first, ...rest]
	const [left, , ...others] = first.margin
	return [{ ...first, margin: [left, 0, ...others] }, ...rest]
}
interface Column {
	nodes: readonly Node[]
	/** Points. */
	width: number
}
/** @param isWhole whether it is so short that it is not torn over two pages */
export const beside = (left: Column, right: Column, isWhole: boolean): Node => ({
	unbreakable: isWhole,
	columnGap: besideGap,
	columns: [left, right].map(({ nodes, width }) => ({ width, stack: levelled(nodes.map(torn)) })),
})
