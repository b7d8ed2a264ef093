/** Which charts belong to which topic: the one list that the screens and the reports ask. */
import type { Assessment } from '../findings/assessment.ts'
import type { Topic } from '../findings/finding.ts'
import { openProtocol, type Protocol } from '../protocol/protocol.ts'
import type { Visit } from '../visit/visit.ts'
import { ankleChart } from './ankle-range.ts'
import type { Chart } from './chart.ts'
import { footLengthChart } from './foot-length.ts'
import { growthChart } from './growth-curves.ts'

type Build = (
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
	protocol: Protocol,
) => Chart | undefined
const builders: Partial<Record<Topic, readonly Build[]>> = {
	sizing: [footLengthChart],
	ankle: [(...given) => ankleChart('cm', ...given), (...given) => ankleChart('deg', ...given)],
	growth: [
		(visit, earlier, assessment) => growthChart('stature', visit, earlier, assessment),
		(visit, earlier, assessment) => growthChart('mass', visit, earlier, assessment),
	],
}
/** The charts of a topic that have anything to show, those with most visits first. */
export function chartsOf(
	topic: Topic,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: Assessment,
	protocol: Protocol = openProtocol(),
): Chart[] {
	return (builders[topic] ?? [])
		.flatMap((build) => build(visit, earlier, assessment, protocol) ?? [])
		.toSorted((a, b) => b.visits - a.visits)
}
