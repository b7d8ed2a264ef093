/**
 * Charts as figures of a report: the same descriptions that the screens draw, with their words as
 * the caption.
 */

import { type Chart, showsCourse } from '../charts/chart.ts'
import { chartsOf } from '../charts/charts.ts'
import { chartSvg } from '../charts/svg.ts'
import type { Assessment } from '../findings/assessment.ts'
import type { Topic } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import { openProtocol, type Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import type { Block } from './document.ts'

export interface ChartsInput {
	visit: Visit
	earlier?: readonly Visit[] | undefined
	assessment: Assessment
	protocol?: Protocol | undefined
	colour: string
}
const widthPt = 460
/**
 * Longer captions than this give way to the latest numbers; the full text stays in `alternative`.
 */
const captionRoom = 420
const heights: Partial<Record<Topic, number>> = { sizing: 145, ankle: 128, growth: 155 }

/** One chart as a figure block. @param mark prints the note number of a basis */
export function chartFigure(
	chart: Chart,
	look: { colour: string; widthPt: number; heightPt: number },
	mark: (basis: Basis) => string,
): Block {
	const words =
		chart.alternative.length <= captionRoom ? chart.alternative : `${chart.title}. ${chart.summary}`
	return {
		kind: 'figure',
		caption: [words, ...new Set(chart.basis.map(mark))].join(' '),
		alternative: chart.alternative,
		svg: chartSvg(chart, look),
		widthPt: look.widthPt,
		heightPt: look.heightPt,
	}
}
/**
 * The first chart of a topic that shows a course: two visits or a forecast. Empty where there is
 * none.
 */
export function chartBlocks(
	topic: Topic,
	{ visit, earlier = [], assessment, protocol = openProtocol(), colour }: ChartsInput,
	mark: (basis: Basis) => string,
): Block[] {
	const chart = chartsOf(topic, visit, earlier, assessment, protocol).find(showsCourse)
	return chart
		? [chartFigure(chart, { colour, widthPt, heightPt: heights[topic] ?? 150 }, mark)]
		: []
}
