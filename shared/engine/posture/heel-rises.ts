/** Heel rises on one leg: against the median of age and sex, and side against side. */
import type { PerSide, PostureSide } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { exactly, type Formula, minus, over, times } from '../findings/formula.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

const decades = ['20', '30', '40', '50', '60', '70'] as const

/** The row for this age and sex; undefined where no figure is published. */
export function riseNormKey(visit: Visit, protocol: Protocol): ThresholdKey | undefined {
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const decade = decades[Math.floor(age / 10) - 2]
	if (age < protocol.value('posture.riseNormFromYears') || !decade) return undefined
	return `posture.rise${visit.player.sex === 'male' ? 'Men' : 'Women'}${decade}`
}
/**
 * A finding where a leg made far fewer rises than the median of age and sex. Half of healthy people
 * lie below a median: only well below it is said, and only beyond the error between days.
 */
export function riseNormFindings(
	visit: Visit,
	side: Side,
	{ heelRises }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const key = riseNormKey(visit, protocol)
	if (key === undefined || heelRises === undefined) return []
	const median = protocol.value(key)
	const beyondError = median - heelRises > protocol.value('posture.riseChange')
	if (!beyondError || heelRises >= median * protocol.value('posture.riseWellBelowShare')) return []
	return [
		findingOf(state('posture.heel-rises', { side, rises: heelRises, published: median }), {
			side,
			level: 'note',
			because: [{ measure: 'heelRises', side, value: heelRises }],
			basis: protocol.basis('heel rises for age', key),
		}),
	]
}
/** Whether children of this age were counted. */
function isCountedChild({ player, visitDate }: Visit, protocol: Protocol): boolean {
	const years = ageYears(player.birthDate, visitDate)
	const [least, most] = ['posture.riseChildMinYears', 'posture.riseChildMaxYears'] as const
	return years >= protocol.value(least) && years <= protocol.value(most)
}
/** A finding where a child made so few rises that the test is repeated before anything is made of it. */
export function childRiseFindings(
	visit: Visit,
	side: Side,
	{ heelRises }: PostureSide,
	protocol: Protocol,
): Finding[] {
	if (heelRises === undefined || !isCountedChild(visit, protocol)) return []
	const limit = protocol.value('posture.riseChildRetest')
	if (heelRises > limit) return []
	const mean = protocol.value('posture.riseChildMean')
	return [
		findingOf(state('posture.heel-rises-again', { side, rises: heelRises, limit, mean }), {
			side,
			level: 'note',
			because: [{ measure: 'heelRises', side, value: heelRises }],
			basis: protocol.basis('heel rises of children', 'posture.riseChildRetest'),
		}),
	]
}
interface RiseGap {
	left: number
	right: number
	/** Difference in rises. */
	rises: number
	/** Difference as per cent of the better leg. */
	percent: Formula
}
/** How far the legs differ; undefined unless both were counted and one rise was made. */
export function riseGap({ left, right }: PerSide<PostureSide>): RiseGap | undefined {
	if (left.heelRises === undefined || right.heelRises === undefined) return undefined
	const most = Math.max(left.heelRises, right.heelRises)
	if (most === 0) return undefined
	const gap = minus(exactly(most), exactly(Math.min(left.heelRises, right.heelRises)))
	return {
		left: left.heelRises,
		right: right.heelRises,
		rises: gap.value,
		percent: times(over(gap, exactly(most)), exactly(100)),
	}
}
/** A finding where the legs differ by the limit in use or more, and by more than a count errs. */
export function riseGapFindings(sides: PerSide<PostureSide>, protocol: Protocol): Finding[] {
	const gap = riseGap(sides)
	if (!gap || gap.percent.value < protocol.value('posture.riseGapPercent')) return []
	if (gap.rises <= protocol.value('posture.riseChange')) return []
	const weaker = gap.left < gap.right ? 'left' : 'right'
	const percent = rounded(gap.percent.value, 0)
	const leastReal = Math.ceil(protocol.value('posture.riseChange'))
	return [
		findingOf(state('posture.heel-rise-gap', { weaker, percent, leastReal }), {
			side: 'both',
			level: 'advise',
			because: bothSides.map((side) => ({ measure: 'heelRises', side, value: gap[side] })),
			basis: protocol.basis('heel-rise difference', 'posture.riseGapPercent'),
		}),
	]
}
