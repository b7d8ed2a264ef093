/** Blocks one under the other, and what may not be torn over two pages. */
import {
	type BlockKind,
	type BlockOf,
	byKind,
	type ForEachKind,
	type LwDocument,
} from '../../shared/engine/report/document.ts'
import { actions, alert, facts } from './blocks/boxes.ts'
import { figure } from './blocks/figures.ts'
import { heading, list, newPageLevel, paragraph, signature } from './blocks/prose.ts'
import { isShortTable, table } from './blocks/tables.ts'
import { chart } from './blocks/wall.ts'
import { type Look, lengthOf, type Node } from './look.ts'
import { type Page, sizesOf } from './page.ts'

/** A figure at true size has a page of its own (sheets.ts). */
export type FlowBlock = BlockOf<Exclude<BlockKind, 'true-size'>>
const blocks: ForEachKind<FlowBlock['kind'], [look: Look], Node> = {
	heading,
	text: paragraph,
	list,
	actions,
	alert,
	facts,
	table,
	chart,
	figure,
	signature,
}

/**
 * Headings, and a sentence that leads on, go with the short table or list they stand over: warning
 * signs are read at one look. Within what must not break nothing else may ask for a break or for
 * wholeness: pdfmake then drops content without a word.
 */
export function flow(flowing: readonly FlowBlock[], look: Look): Node[] {
	const nodes: Node[] = []
	let next = 0
	while (next < flowing.length) {
		const group = flowing.slice(next, next + groupLength(flowing, next))
		const drawn = group.map((block) => byKind(blocks, block, look))
		nodes.push(...(group.length > 1 ? [whole(drawn)] : drawn))
		next += group.length
	}
	return nodes
}
const whole = (nodes: readonly Node[]): Node => ({
	unbreakable: true,
	stack: nodes.map(({ headlineLevel: _, unbreakable: __, ...node }) => node),
})
/** How many blocks from here on stay together: 1 where the block stands for itself. */
function groupLength(flowing: readonly FlowBlock[], start: number): number {
	let end = start
	while (staysWithNext(flowing[end])) end++
	if (leadsOn(flowing[end]) && flowing[end + 1]?.kind === 'list') end++
	return end > start && keepsWhole(flowing[end]) ? end - start + 1 : 1
}
const staysWithNext = (block: FlowBlock | undefined): boolean =>
	block?.kind === 'heading' && !block.newPage
const leadsOn = (block: FlowBlock | undefined): boolean =>
	block?.kind === 'text' && block.text.length < 200
function keepsWhole(block: FlowBlock | undefined): boolean {
	if (block?.kind === 'table') return isShortTable(block)
	return block?.kind === 'list' && block.items.length <= 6 && lengthOf(block.items) < 600
}
/** A part of a page as pdfmake tells of it. */
interface LaidOut {
	headlineLevel?: number
	/** Of the whole document, as far as it is laid out. */
	pages?: number
	startPosition?: { top: number; pageNumber: number }
}
interface Around {
	getFollowingNodesOnPage?: () => unknown[]
	getPreviousNodesOnPage?: () => LaidOut[]
}
/** pdfmake tells nothing of what begins a page by itself, but of what stands before a node. */
const beginsAnew = ({ getPreviousNodesOnPage }: Around = {}): boolean =>
	getPreviousNodesOnPage?.().some(({ headlineLevel }) => headlineLevel === newPageLevel) ?? false
/**
 * Notes whether what must stand on the first page went on to the next: all of the document but its
 * sheets, or what stands before a page break of its own.
 */
function pageOneWatch(document: LwDocument, laid: { overflows: boolean }) {
	let isWatching = sizesOf(document).length > 1
	const goesOn = document.blocks.some((block) => block.kind === 'heading' && block.newPage)
	const sheets = document.blocks.filter(({ kind }) => kind === 'true-size').length
	return ({ pages = 1, startPosition }: LaidOut, around?: Around): void => {
		if (!isWatching) return
		const place = startPosition?.pageNumber ?? 1
		if (!goesOn) laid.overflows ||= pages > 1 + sheets
		else if (place > 1) {
			// what may not be torn is told of where it would have begun: only what follows is sure
			laid.overflows ||= !beginsAnew(around) || place > 2
			isWatching = false
		}
	}
}
/**
 * Keeps a heading with what follows it: the page ends before a heading that would stand alone at
 * its foot.
 */
export function breakBefore(page: Page, document: LwDocument, laid: { overflows: boolean }) {
	const watch = pageOneWatch(document, laid)
	return (node: LaidOut, around?: Around): boolean => {
		watch(node, around)
		if (node.headlineLevel === undefined) return false
		const following = around?.getFollowingNodesOnPage?.() ?? []
		if (following.length === 0) return true
		const top = node.startPosition?.top ?? 0
		const lowest = page.heightPt - page.margins[3] - 11 * page.lineRoom
		return node.headlineLevel <= 2 && top > lowest
	}
}
