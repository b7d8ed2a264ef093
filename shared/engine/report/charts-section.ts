/**
 * Charts as figures of a report: the same descriptions that the screens draw, with their words as
 * the caption.
 */
import { type Chart, showsCourse } from '../charts/chart.ts'
import { chartsOf } from '../charts/charts.ts'
import { chartSvg } from '../charts/svg.ts'
import { openProtocol } from '../protocol/protocol.ts'
import type { Block } from './document.ts'
import type { ReportInput } from './inputs.ts'
import type { Notes } from './notes.ts'

const widthPt = 460
const heightsPt = { sizing: 145, ankle: 128, growth: 155 } as const
/**
 * Longer captions than this give way to the latest numbers; the full text stays in `alternative`.
 */
const captionRoom = 420

/**
 * The first chart of a topic that shows a course: two visits or a forecast. Its sources are
 * numbered with the others. Empty where there is none.
 */
export function courseBlocks(
	topic: keyof typeof heightsPt,
	{ visit, earlier = [], assessment, protocol = openProtocol(), clinic }: ReportInput,
	notes: Notes,
): Block[] {
	const chart = chartsOf(topic, visit, earlier, assessment, protocol).find(showsCourse)
	if (!chart) return []
	const heightPt = heightsPt[topic]
	const marks = new Set(chart.basis.map((basis) => notes.mark(basis)))
	return [
		{
			kind: 'figure',
			caption: [captionOf(chart), ...marks].join(' '),
			alternative: chart.alternative,
			svg: chartSvg(chart, { colour: clinic.colour, widthPt, heightPt }),
			widthPt,
			heightPt,
		},
	]
}
const captionOf = ({ title, alternative, summary }: Chart): string =>
	alternative.length <= captionRoom ? alternative : `${title}. ${summary}`
