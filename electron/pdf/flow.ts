/** Blocks one under the other, and what may not be torn over two pages. */
import {
	type BlockKind,
	type BlockOf,
	byKind,
	endOfPageOne,
	type ForEachKind,
	type InnerBlock,
	type InnerKind,
	type LwDocument,
} from '../../shared/engine/report/document.ts'
import { textsIn } from '../../shared/engine/report/texts.ts'
import { beside, besideGap, torn } from './blocks/beside.ts'
import {
	actions,
	alert,
	facts,
	isShortActions,
	isShortAlert,
	isShortFacts,
} from './blocks/boxes.ts'
import { figure } from './blocks/figures.ts'
import {
	heading,
	list,
	notOnPageOneLevel,
	pageOneEnd,
	pageOneEndLevel,
	paragraph,
	signature,
} from './blocks/prose.ts'
import { isShortTable, table } from './blocks/tables.ts'
import { chart } from './blocks/wall.ts'
import { keepTogether, type Look, lengthOf, type Node } from './look.ts'
import { type Page, sizesOf } from './page.ts'

/** A figure at true size has a page of its own (sheets.ts). */
export type FlowBlock = BlockOf<Exclude<BlockKind, 'true-size'>>
const inner: ForEachKind<InnerKind, [look: Look], Node> = {
	heading,
	text: paragraph,
	list,
	actions,
	alert,
	facts,
	table,
	figure,
	signature,
}
const blocks: ForEachKind<FlowBlock['kind'], [look: Look], Node> = {
	...inner,
	chart,
	beside: (block, look) => {
		const { leftPercent = 50 } = block
		const room = look.page.bodyPt - besideGap
		const column = (run: readonly InnerBlock[], percent: number) => {
			const width = (room * percent) / 100
			const narrow = { ...look, page: { ...look.page, bodyPt: width } }
			return { width, nodes: run.map((one) => byKind(inner, one, narrow)) }
		}
		return beside(
			column(block.left, leftPercent),
			column(block.right, 100 - leftPercent),
			isShortBeside(block),
		)
	},
}
/** Whether it stays whole: so few letters in either column that they take less than a page. */
const isShortBeside = ({ left, right }: BlockOf<'beside'>): boolean =>
	[left, right].every((run) => lengthOf(textsIn(run)) < keepTogether)

/**
 * Headings, and a sentence that leads on, go with the short table or list they stand over: warning
 * signs are read at one look. Within what must not break nothing else may ask for a break or for
 * wholeness: pdfmake then drops content without a word.
 */
export function flow(flowing: readonly FlowBlock[], look: Look): Node[] {
	const nodes: Node[] = []
	const end = endOfPageOne(flowing)
	let next = 0
	while (next < flowing.length) {
		if (next === end) nodes.push(pageOneEnd())
		const group = flowing.slice(next, next + groupLength(flowing, next))
		const drawn = group.map((block) => byKind(blocks, block, look))
		const [first] = group
		if (leadsToTable(flowing, next)) drawn[0] = { ...drawn[0], headlineLevel: overTableLevel }
		const together = group.length > 1 ? [whole(drawn)] : drawn
		nodes.push(...(first?.kind === 'heading' ? together.map(asBeginning) : together))
		next += group.length
	}
	return nodes
}
/** Of a heading over a table that may be torn: its caption, head and first row go with it. */
const overTableLevel = 4
const captionLevel = 3
/** How many tenths of a heading's room each needs below it; what is not named needs none. */
const roomBelow: Readonly<Record<number, number>> = {
	[notOnPageOneLevel]: 11,
	1: 11,
	2: 11,
	[captionLevel]: 11,
	[overTableLevel]: 18,
}
function leadsToTable(flowing: readonly FlowBlock[], start: number): boolean {
	const heading = flowing[start]
	if (heading?.kind !== 'heading' || heading.notOnPageOne) return false
	const next = flowing.slice(start).find(({ kind }) => kind !== 'heading')
	return next?.kind === 'table' && !isShortTable(next)
}
/** A page may end before it. */
const asBeginning = (node: Node): Node => ({ ...node, begins: true })
const whole = (nodes: readonly Node[]): Node => ({
	unbreakable: true,
	// the whole may ask for what its first part asks
	...(nodes[0]?.headlineLevel === notOnPageOneLevel && { headlineLevel: notOnPageOneLevel }),
	stack: nodes.map(torn),
})
/** How many blocks from here on stay together: 1 where the block stands for itself. */
function groupLength(flowing: readonly FlowBlock[], start: number): number {
	let end = start
	while (staysWithNext(flowing[end])) end++
	if (leadsOn(flowing[end]) && flowing[end + 1]?.kind === 'list') end++
	const isWhole = keepsWhole(flowing[end])
	const isLast = flowing.slice(end + 1).every(closes)
	// a signature is never alone on its page
	if (isLast && (isWhole || flowing[end]?.kind === 'text')) return flowing.length - start
	return isWhole ? end - start + 1 : 1
}
/** What may stand between the last thing that is said and the end. */
const closes = (block: FlowBlock): boolean =>
	block.kind === 'signature' || (block.kind === 'text' && block.tone === 'small')
const staysWithNext = (block: FlowBlock | undefined): boolean =>
	block?.kind === 'heading' && !block.newPage
const leadsOn = (block: FlowBlock | undefined): boolean =>
	block?.kind === 'text' && block.text.length < 200
function keepsWhole(block: FlowBlock | undefined): boolean {
	if (block?.kind === 'table') return isShortTable(block)
	if (block?.kind === 'facts') return isShortFacts(block)
	if (block?.kind === 'beside') return isShortBeside(block)
	if (block?.kind === 'alert') return isShortAlert(block)
	if (block?.kind === 'actions') return isShortActions(block)
	if (block?.kind === 'figure') return true
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
}
/** Notes whether what must stand on the first page went on to the next; sheets are no such pages. */
function pageOneWatch(document: LwDocument, laid: { overflows: boolean }) {
	const isWatching = sizesOf(document).length > 1
	const isOnePage = endOfPageOne(document.blocks) < 0
	const sheets = document.blocks.filter(({ kind }) => kind === 'true-size').length
	return ({ headlineLevel, pages = 1, startPosition }: LaidOut): void => {
		if (!isWatching) return
		if (isOnePage) laid.overflows ||= pages > 1 + sheets
		else if (headlineLevel === pageOneEndLevel)
			laid.overflows ||= (startPosition?.pageNumber ?? 1) > 1
	}
}
/**
 * Keeps a heading with what follows it: the page ends before a heading that would stand alone at
 * its foot, and before one that never stands on the first page.
 */
export function breakBefore(page: Page, document: LwDocument, laid: { overflows: boolean }) {
	const watch = pageOneWatch(document, laid)
	const lowestOf = (level: number) =>
		page.heightPt - page.margins[3] - (roomBelow[level] ?? 0) * page.lineRoom
	return (node: LaidOut, around?: Around): boolean => {
		watch(node)
		const { headlineLevel, startPosition } = node
		if (headlineLevel === undefined || headlineLevel === pageOneEndLevel) return false
		const { top = 0, pageNumber = 1 } = startPosition ?? {}
		const isLow = top > lowestOf(headlineLevel)
		if (headlineLevel === notOnPageOneLevel) return pageNumber === 1 || isLow
		const following = around?.getFollowingNodesOnPage?.() ?? []
		return following.length === 0 || isLow
	}
}
