/** Charts as figures of a player's report: the pictures of the screens, in plain words. */
import { showsCourse } from '../charts/chart.ts'
import { chartsOf } from '../charts/charts.ts'
import { chartSvg } from '../charts/svg.ts'
import { openProtocol } from '../protocol/protocol.ts'
import type { Speak } from '../words/speak.ts'
import type { BlockOf } from './document.ts'
import type { ReportInput } from './inputs.ts'
import { type Notes, withMarks } from './notes.ts'
import { plainChart } from './plain-chart.ts'
import { readerOf } from './reader.ts'

const usualWidthPt = 460
const heightsPt = { sizing: 108, ankle: 128, growth: 140 } as const

/**
 * The first chart of a topic that has words for a player and shows a course: two visits or a
 * forecast. Its sources are numbered with the others. Empty where there is none.
 */
export function courseBlocks(
	topic: keyof typeof heightsPt,
	input: ReportInput,
	notes: Notes,
	t: Speak,
	widthPt = usualWidthPt,
): BlockOf<'figure'>[] {
	const { visit, earlier = [], assessment, protocol = openProtocol(), clinic } = input
	const reader = readerOf('player', input)
	const [first] = chartsOf(topic, visit, earlier, assessment, protocol)
		.filter(showsCourse)
		.flatMap((shown) => plainChart(shown, reader, t) ?? [])
	if (!first) return []
	const { chart, caption } = first
	const heightPt = heightsPt[topic]
	const marks = new Set(chart.basis.map((basis) => notes.mark(basis)))
	return [
		{
			kind: 'figure',
			caption: withMarks(caption, ...marks),
			alternative: chart.alternative,
			svg: chartSvg(chart, { colour: clinic.colour, widthPt, heightPt }),
			widthPt,
			heightPt,
		},
	]
}
