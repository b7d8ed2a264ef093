/** Heel rises on one leg: against the published figure for age and sex, and side against side. */
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
/** A finding where a leg made fewer rises than the figure for age and sex. */
export function riseNormFindings(
	visit: Visit,
	side: Side,
	{ heelRises }: PostureSide,
	protocol: Protocol,
): Finding[] {
	const key = riseNormKey(visit, protocol)
	if (key === undefined || heelRises === undefined) return []
	const published = protocol.value(key)
	if (heelRises >= published) return []
	return [
		findingOf(state('posture.heel-rises', { side, rises: heelRises, published }), {
			side,
			level: 'note',
			because: [{ measure: 'heelRises', side, value: heelRises }],
			basis: protocol.basis('heel rises for age', key),
		}),
	]
}
interface RiseGap {
	left: number
	right: number
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
		percent: times(over(gap, exactly(most)), exactly(100)),
	}
}
/** A finding where the legs differ by the limit in use or more. */
export function riseGapFindings(sides: PerSide<PostureSide>, protocol: Protocol): Finding[] {
	const gap = riseGap(sides)
	if (!gap || gap.percent.value < protocol.value('posture.riseGapPercent')) return []
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
