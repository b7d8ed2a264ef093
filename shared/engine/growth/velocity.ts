/** How fast stature and feet grew since an earlier visit. */
import type { GrowthResult } from '../findings/assessment.ts'
import { examinersOf, stanceOf } from '../findings/change.ts'
import { type Finding, reading } from '../findings/finding.ts'
import { exactly, type Formula, over, quantity, squareRoot, times } from '../findings/formula.ts'
import { daysBetween } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { daysPerYear } from '../visit/age.ts'
import { bodySize } from '../visit/body-size.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { growthFinding } from './says.ts'

const yearsOf = (days: number) => over(quantity(days, 1), exactly(daysPerYear))
/** Rate per year of a change over a number of days, in the unit of the change. */
export const perYear = (change: number, days: number): Formula =>
	over(quantity(change), yearsOf(days))
/** The factor of a 95 % range on either side of the mean. */
const z95 = 1.96
/**
 * 95 % error of an annualised rate from two readings with the same standard deviation: 1.96 x root
 * 2 x SD / years.
 */
export const perYearError = (sd: number, days: number): Formula =>
	over(times(exactly(z95), squareRoot(exactly(2)), exactly(sd)), yearsOf(days))

/** Mean length of the longer foot as measured, mm; undefined where neither is. */
export function longerFootMm(visit: Visit): number | undefined {
	const lengths = [visit.feet?.left?.heelToToeMm, visit.feet?.right?.heelToToeMm]
		.map(meanOf)
		.filter((length) => length !== undefined)
	return lengths.length === 0 ? undefined : Math.max(...lengths)
}
interface Change {
	then: Visit
	days: number
	change: number
}
/**
 * The change since the latest earlier visit at least `minDays` ago that has the measure; failing
 * that, since the latest nearer one.
 */
function changeSince(
	visit: Visit,
	earlier: readonly Visit[],
	of: (visit: Visit) => number | undefined,
	minDays: number,
): Change | undefined {
	const now = of(visit)
	if (now === undefined) return undefined
	const changes = earlier
		.flatMap((then): Change[] => {
			const was = of(then)
			const days = daysBetween(then.visitDate, visit.visitDate)
			return was === undefined || days <= 0 ? [] : [{ then, days, change: now - was }]
		})
		.sort((near, far) => near.days - far.days)
	return changes.find(({ days }) => days >= minDays) ?? changes[0]
}

type Velocity = NonNullable<GrowthResult['velocity']>
const intervalReasons = ({ change, days }: Change) => [
	reading('statureChangeCm', change, 'cm'),
	reading('intervalDays', days, 'days'),
]
/** Why no rate is given: stature fell, or the interval is too short; undefined where one is. */
function rateRefusal(found: Change, protocol: Protocol): Finding | undefined {
	const since = found.then.visitDate
	const leastDays = protocol.value('growth.velocityMinDays')
	// Rounded so that 0.6 cm, reached by subtraction, is still within the limit.
	if (rounded(found.change, 6) < -protocol.value('growth.shrinkCm'))
		return growthFinding(
			state('growth.shrunk', { since }),
			'caution',
			intervalReasons(found),
			protocol.basis('negative growth', 'growth.shrinkCm'),
		)
	if (found.days >= leastDays) return undefined
	return growthFinding(
		state('growth.velocity-short', { since, days: found.days, leastDays }),
		'note',
		intervalReasons(found),
		protocol.basis('growth rate interval', 'growth.velocityMinDays'),
	)
}
function rateFinding(
	{ cmPerYear, errorCmPerYear, trendOnly, since }: Velocity,
	found: Change,
	protocol: Protocol,
): Finding {
	const withinError = cmPerYear < errorCmPerYear
	const shown = { cmPerYear: rounded(cmPerYear, 1), errorCmPerYear: rounded(errorCmPerYear, 1) }
	return growthFinding(
		state('growth.velocity', { since, ...shown, trendOnly, withinError }),
		'note',
		[
			{ measure: 'growthRate', value: rounded(cmPerYear, 2), unit: 'cm/y' },
			{ measure: 'growthRateError', value: rounded(errorCmPerYear, 2), unit: 'cm/y' },
			...intervalReasons(found),
		],
		protocol.basis(
			'growth rate between visits',
			trendOnly ? 'growth.velocityTrendDays' : 'growth.statureReadingSdCm',
		),
	)
}
/** A finding where stature grows as fast as in the group that was injured more. */
function fastFindings({ cmPerYear, errorCmPerYear }: Velocity, protocol: Protocol): Finding[] {
	const fastCmPerYear = protocol.value('growth.fastCmPerYear')
	if (cmPerYear < fastCmPerYear) return []
	const sure = cmPerYear - errorCmPerYear >= fastCmPerYear
	return [
		growthFinding(
			state('growth.fast', { sure, fastCmPerYear }),
			'advise',
			[reading('growthRate', cmPerYear, 'cm/y')],
			protocol.basis('fast growth', 'growth.fastCmPerYear'),
		),
	]
}
/**
 * Stature growth since an earlier visit: refused (too soon, or shrunk), a trend only, or a rate
 * with its error, cm/y.
 */
export function statureVelocity(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): { velocity?: Velocity; findings: Finding[] } {
	const leastDays = protocol.value('growth.velocityMinDays')
	const found = changeSince(visit, earlier, (then) => bodySize(then).statureCm, leastDays)
	if (!found) return { findings: [] }
	const refused = rateRefusal(found, protocol)
	if (refused) return { findings: [refused] }
	const { then, days, change } = found
	const velocity = {
		since: then.visitDate,
		days,
		changeCm: change,
		cmPerYear: perYear(change, days).value,
		errorCmPerYear: perYearError(protocol.value('growth.statureReadingSdCm'), days).value,
		trendOnly: days < protocol.value('growth.velocityTrendDays'),
	}
	return {
		velocity,
		findings: [rateFinding(velocity, found, protocol), ...fastFindings(velocity, protocol)],
	}
}
export interface FootGrowth {
	since: string
	days: number
	changeMm: number
	mmPerYear: number
	/** The change is beyond measuring error. */
	real: boolean
}
/**
 * Foot growth since an earlier visit in the same stance; undefined where not measured twice or too
 * soon.
 */
export function footGrowth(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): FootGrowth | undefined {
	const leastDays = protocol.value('growth.footIntervalMinDays')
	const alike = earlier.filter((then) => stanceOf(then) === stanceOf(visit))
	const found = changeSince(visit, alike, longerFootMm, leastDays)
	if (!found || found.days < leastDays) return undefined
	const { then, days, change } = found
	const limit = protocol.value(
		examinersOf(visit, then) === 'same' ? 'sizing.realLengthSameMm' : 'sizing.realLengthOtherMm',
	)
	return {
		since: then.visitDate,
		days,
		changeMm: change,
		mmPerYear: perYear(change, days).value,
		real: rounded(change, 4) >= limit,
	}
}
/** A finding where the foot grew fast, as far as measuring error lets one say. */
export function footFastFindings(feet: FootGrowth | undefined, protocol: Protocol): Finding[] {
	if (!feet || feet.mmPerYear <= protocol.value('growth.footFastMmPerYear')) return []
	return [
		growthFinding(
			state('growth.foot-fast', { real: feet.real, since: feet.since }),
			feet.real ? 'advise' : 'note',
			[
				reading('footGrowthRate', feet.mmPerYear, 'mm/y'),
				reading('footChangeMm', feet.changeMm, 'mm'),
			],
			protocol.basis('fast foot growth', 'growth.footFastMmPerYear'),
		),
	]
}
