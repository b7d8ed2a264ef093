/** The charts of the measures: which there are, and where they stand, follows from their definitions. */
import type { KeptAssessment } from '../findings/assessment.ts'
import type { Topic } from '../findings/finding.ts'
import { openProtocol, type Protocol } from '../protocol/protocol.ts'
import { numberMeasures, type Placed } from '../visit/measures/catalogue.ts'
import type { NumberMeasure, Picture } from '../visit/measures/measure.ts'
import type { Visit } from '../visit/visit.ts'
import { hoursChart, painChart } from './as-recorded.ts'
import type { Chart } from './chart.ts'
import { inOrder } from './course.ts'
import { footLengthChart } from './foot-length.ts'
import { growthChart } from './growth-curves.ts'
import { measureChart } from './measure-course.ts'

type Build = (
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
	protocol: Protocol,
) => Chart | undefined
/** Pictures that show more than the measure alone; undefined where this one does not apply. */
const pictures: Record<Picture, Build> = {
	'foot-length': footLengthChart,
	'stature-for-age': (visit, earlier, assessment) =>
		growthChart('stature', visit, earlier, assessment),
	'mass-for-age': (visit, earlier, assessment) => growthChart('mass', visit, earlier, assessment),
	'hours-of-sport': (visit, earlier) => hoursChart(inOrder(visit, earlier)),
}
type Trended = Placed<NumberMeasure> & { trend: Exclude<NumberMeasure['trend'], 'none'> }
const trended: readonly Trended[] = numberMeasures.flatMap((placed) => {
	const { trend } = placed.measure
	return trend === 'none' ? [] : [{ ...placed, trend }]
})
/** A chart each of what is drawn, once where measures share a picture. */
function drawn(
	measures: readonly Trended[],
	build: (measure: Trended) => Chart | undefined,
): Chart[] {
	const shared = new Set<string>()
	return measures.flatMap((measure) => {
		const { picture } = measure.trend
		if (shared.has(picture)) return []
		if (picture !== 'own') shared.add(picture)
		return build(measure) ?? []
	})
}
/**
 * The charts of a topic that stand beside its findings and on paper, where they have anything to
 * show: those with most visits first.
 */
export function chartsOf(
	topic: Topic,
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
	protocol: Protocol = openProtocol(),
): Chart[] {
	const beside = trended.filter(
		(measure) => measure.topic === topic && measure.trend.beside === 'findings',
	)
	return drawn(beside, ({ trend: { picture }, ...placed }) =>
		picture === 'own'
			? measureChart(placed, visit, earlier, assessment, protocol)
			: pictures[picture](visit, earlier, assessment, protocol),
	).toSorted((a, b) => b.visits - a.visits)
}
/**
 * A chart of every measure that trends and of pain, in the order of the walk. Where the picture of
 * a measure does not apply (growth curves of an adult) its own course is drawn.
 */
export function coursesOf(
	visit: Visit,
	earlier: readonly Visit[],
	assessment: KeptAssessment,
	protocol: Protocol = openProtocol(),
): Chart[] {
	const own = (placed: Placed<NumberMeasure>) =>
		measureChart(placed, visit, earlier, assessment, protocol)
	const charts = drawn(trended, ({ trend: { picture }, ...placed }) => {
		if (picture === 'own') return own(placed)
		const chart = pictures[picture](visit, earlier, assessment, protocol)
		return chart ?? (picture === 'hours-of-sport' ? undefined : own(placed))
	})
	const pain = painChart(inOrder(visit, earlier))
	return pain ? [...charts, pain] : charts
}
