/**
 * The structure of a page, told from the nodes that it is laid out from. Each node that is drawn
 * learns its part; what has none (lines, washes, running heads, the mark of a draft) is decoration.
 */
import { need } from '../../../shared/engine/plain/need.ts'
import type { Node } from '../look.ts'
import { type NodeIs, type Part, partOf } from './part.ts'

type Inside = (node: Node, parent: Part) => void
/** The nodes that a node holds, whatever it calls them. */
const nodesIn = (node: Node): Node[] =>
	[node.stack, node.columns, node.section].flatMap((held) => (Array.isArray(held) ? held : []))
const rowsOf = (node: Node): Node[][] => (node.table as { body: Node[][] } | undefined)?.body ?? []
const hasWords = ({ text }: Node): boolean => text !== undefined && text !== ''

/** What a text is read as, by what it is. */
const textRoles = { title: 'H1', heading: 'H2', sub: 'H3', caption: 'Caption' } as const
const isTextRole = (is: unknown): is is keyof typeof textRoles =>
	typeof is === 'string' && Object.hasOwn(textRoles, is)
const text: Inside = (node, parent) => {
	if (!hasWords(node)) return
	node.part = partOf(parent, isTextRole(node.is) ? textRoles[node.is] : 'P')
}
const drawing: Inside = (node, parent) => {
	node.part = partOf(parent, 'Figure', { alternative: String(node.alternative ?? '') })
}
/** Words of a cell or of an item are its own; anything else stands in it. */
const filled: Inside = (node, parent) => {
	if (node.text === undefined || isTextRole(node.is)) grown(node, parent)
	else if (hasWords(node)) node.part = parent
}
const list: Inside = (node, parent) => {
	const part = partOf(parent, 'L')
	const items = (node.ul ?? node.ol) as Node[]
	for (const item of items) filled(item, partOf(partOf(part, 'LI'), 'LBody'))
}
const numbered: Inside = (node, parent) => {
	const part = partOf(parent, 'L')
	for (const [number, ...said] of rowsOf(node)) {
		const item = partOf(part, 'LI')
		filled(need(number, 'the number of an item'), partOf(item, 'Lbl'))
		const body = partOf(item, 'LBody')
		for (const cell of said) grown(cell, body)
	}
}
const headedBy = (rows: readonly Node[][], part: Part, heads: number): void => {
	for (const [place, cells] of rows.entries()) {
		const row = partOf(part, 'TR')
		for (const [column, cell] of cells.entries())
			filled(cell, cellIn(row, { isHead: place < heads, isName: column === 0 }))
	}
}
function cellIn(row: Part, { isHead, isName }: { isHead: boolean; isName: boolean }): Part {
	if (isHead) return partOf(row, 'TH', { scope: 'Column' })
	return isName ? partOf(row, 'TH', { scope: 'Row' }) : partOf(row, 'TD')
}
const headRows = (node: Node): number => (node.table as { headerRows?: number }).headerRows ?? 0
const tables: Partial<Record<NodeIs, Inside>> = {
	data: (node, parent) => headedBy(rowsOf(node), partOf(parent, 'Table'), headRows(node)),
	facts: (node, parent) => headedBy(rowsOf(node), partOf(parent, 'Table'), 0),
	items: numbered,
	box: (node, parent) => inside(rowsOf(node).flat(), partOf(parent, 'Sect')),
}
/** A table that says nothing of itself only holds its place. */
const table: Inside = (node, parent) => {
	const known = tables[node.is as NodeIs]
	if (known) known(node, parent)
	else inside(rowsOf(node).flat(), parent)
}
/** The caption is the first thing of its table or figure, wherever it stands. */
const captioned: Inside = (node, parent) => {
	const nodes = nodesIn(node)
	const captions = nodes.filter(({ is }) => is === 'caption')
	inside(
		nodes.filter(({ is }) => is !== 'caption'),
		parent,
	)
	const shown = parent.inner.at(-1)
	if (!shown || !('role' in shown)) return
	for (const caption of captions) {
		text(caption, shown)
		shown.inner.unshift(need(shown.inner.pop(), 'a caption'))
	}
}
const forms: readonly [keyof Node, Inside][] = [
	['text', text],
	['svg', drawing],
	['image', drawing],
	['ul', list],
	['ol', list],
	['table', table],
]
const inside = (nodes: readonly Node[], parent: Part): void => {
	for (const node of nodes) grown(node, parent)
}
const grown: Inside = (node, parent) => {
	if (node.is === 'decoration') return
	if (node.is === 'captioned') return captioned(node, parent)
	const [, form] = forms.find(([name]) => node[name] !== undefined) ?? []
	if (form) form(node, parent)
	else inside(nodesIn(node), parent)
}
/**
 * The structure of the content of a page definition. Each node with words or a drawing is given
 * its `part`. @param content the nodes, in the order in which they are read
 */
export function structureOf(content: readonly Node[]): Part {
	const whole: Part = { role: 'Document', inner: [] }
	inside(content, whole)
	return whole
}
