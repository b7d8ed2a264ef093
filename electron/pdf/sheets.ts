/** The pages of a document in order: what flows, and the figures at true size between. */
import type { BlockOf, LwDocument } from '../../shared/engine/report/document.ts'
import { trueSizeSheet } from './blocks/figures.ts'
import { type FlowBlock, flow } from './flow.ts'
import type { PageFurniture } from './furniture.ts'
import type { Look, Node } from './look.ts'

/** Blocks that flow up to a sheet; the last run has none. */
interface Run {
	flowing: FlowBlock[]
	sheet?: BlockOf<'true-size'>
}
function runsOf({ blocks }: LwDocument): Run[] {
	const runs: Run[] = []
	let flowing: FlowBlock[] = []
	for (const block of blocks)
		if (block.kind === 'true-size') {
			runs.push({ flowing, sheet: block })
			flowing = []
		} else flowing.push(block)
	return [...runs, { flowing }]
}
/**
 * The content of the definition: plain nodes, or sections where a sheet has a page of its own.
 * @param before stands over the first block, `after` under the last
 */
export function contentOf(
	document: LwDocument,
	look: Look,
	{ before, after, head, foot }: PageFurniture,
): Node[] {
	const { page } = look
	const runs = runsOf(document)
	const last = runs.length - 1
	const flows = runs.map(({ flowing, sheet }, index) => ({
		nodes: [
			...(index === 0 ? before : []),
			...flow(flowing, look),
			...(index === last ? after : []),
		],
		sheet,
	}))
	if (last === 0) return flows.flatMap(({ nodes }) => nodes)
	return flows.flatMap(({ nodes, sheet }): Node[] => {
		const section = {
			section: nodes,
			pageSize: page.size,
			pageOrientation: page.orientation,
			pageMargins: page.margins,
			header: head,
			footer: foot,
		}
		return [
			...(nodes.length > 0 ? [section] : []),
			...(sheet ? [trueSizeSheet(sheet, document)] : []),
		]
	})
}
