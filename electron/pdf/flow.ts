/** Blocks one under the other, and what may not be torn over two pages. */
import {
	type BlockKind,
	type BlockOf,
	byKind,
	type ForEachKind,
} from '../../shared/engine/report/document.ts'
import { actions, alert } from './blocks/boxes.ts'
import { figure } from './blocks/figures.ts'
import { heading, list, paragraph, signature } from './blocks/prose.ts'
import { isShortTable, table } from './blocks/tables.ts'
import { chart } from './blocks/wall.ts'
import { type Look, lengthOf, type Node } from './look.ts'
import type { Page } from './page.ts'

/** A figure at true size has a page of its own (sheets.ts). */
export type FlowBlock = BlockOf<Exclude<BlockKind, 'true-size'>>
const blocks: ForEachKind<FlowBlock['kind'], [look: Look], Node> = {
	heading,
	text: paragraph,
	list,
	actions,
	alert,
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
/**
 * Keeps a heading with what follows it: the page ends before a heading that would stand alone at
 * its foot.
 */
export const breakBefore =
	(page: Page) =>
	(
		node: { headlineLevel?: number; startPosition?: { top: number } },
		container?: { getFollowingNodesOnPage?: () => unknown[] },
	): boolean => {
		if (node.headlineLevel === undefined) return false
		const following = container?.getFollowingNodesOnPage?.() ?? []
		if (following.length === 0) return true
		const top = node.startPosition?.top ?? 0
		const lowest = page.heightPt - page.margins[3] - 11 * page.lineRoom
		return node.headlineLevel <= 2 && top > lowest
	}
