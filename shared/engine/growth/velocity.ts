import type { GrowthResult } from '../findings/assessment.ts'
import { examinersOf, stanceOf } from '../findings/change.ts'
import type { Finding } from '../findings/finding.ts'
import { dayInWords, daysBetween } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { finding } from './says.ts'

const daysPerYear = 365.25
/** Rate per year of a change over a number of days, in the unit of the change. */
export const perYear = (change: number, days: number): number => change / (days / daysPerYear)
/**
 * 95 % error of an annualised rate from two readings with the same standard deviation: 1.96 x root
 * 2 x SD / years.
 */
export const perYearError = (sd: number, days: number): number =>
	(1.96 * Math.SQRT2 * sd) / (days / daysPerYear)

/** Mean length of the longer foot as measured, mm; undefined where neither is. */
export function longerFootMm(visit: Visit): number | undefined {
	const lengths = [visit.feet?.left?.heelToToeMm, visit.feet?.right?.heelToToeMm]
		.map(meanOf)
		.filter((one) => one !== undefined)
	return lengths.length === 0 ? undefined : Math.max(...lengths)
}
interface Change {
	days: number
	change: number
	since: string
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
	const found = earlier
		.map((one) => ({
			value: of(one),
			days: daysBetween(one.visitDate, visit.visitDate),
			since: one.visitDate,
		}))
		.filter((one) => one.value !== undefined && one.days > 0)
		.sort((a, b) => a.days - b.days)
	const chosen = found.find((one) => one.days >= minDays) ?? found[0]
	return chosen && { days: chosen.days, change: now - chosen.value!, since: chosen.since }
}

/**
 * Stature growth since an earlier visit: refused (too soon, or shrunk), a trend only, or a rate
 * with its error, cm/y.
 */
export function statureVelocity(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): { velocity?: NonNullable<GrowthResult['velocity']>; findings: Finding[] } {
	const least = protocol.value('growth.velocityMinDays')
	const found = changeSince(visit, earlier, (one) => one.body?.statureCm, least)
	if (!found) return { findings: [] }
	const { since, days } = found
	const because = [
		{ measure: 'Change of stature', value: rounded(found.change, 1), unit: 'cm' },
		{ measure: 'Interval', value: days, unit: 'days' },
	]
	// Rounded so that 0.6 cm, reached by subtraction, is still within the limit.
	if (rounded(found.change, 6) < -protocol.value('growth.shrinkCm'))
		return {
			findings: [
				finding(
					'growth.shrunk',
					'caution',
					`No growth rate: stature is lower than on ${dayInWords(since)}. Measure it again, by ` +
						'the same observer and at the same time of day.',
					because,
					protocol.basis('negative growth', 'growth.shrinkCm'),
				),
			],
		}
	if (days < least)
		return {
			findings: [
				finding(
					'growth.velocity-short',
					'note',
					`No growth rate: only ${days} days since the stature of ${since}; at least ${least} ` +
						'are needed.',
					because,
					protocol.basis('growth rate interval', 'growth.velocityMinDays'),
				),
			],
		}
	const cmPerYear = perYear(found.change, days),
		errorCmPerYear = perYearError(protocol.value('growth.statureReadingSdCm'), days)
	const trendOnly = days < protocol.value('growth.velocityTrendDays')
	const findings = [
		finding(
			'growth.velocity',
			'note',
			`Growth since ${dayInWords(since)}: ${rounded(cmPerYear, 1)} cm a year, give or take ` +
				`${rounded(errorCmPerYear, 1)}${trendOnly ? ' (short interval: a trend only)' : ''}.${cmPerYear < errorCmPerYear ? ' This is no more than measuring error.' : ''}`,
			[
				{ measure: 'Growth rate', value: rounded(cmPerYear, 2), unit: 'cm/y' },
				{ measure: 'Error (95 %)', value: rounded(errorCmPerYear, 2), unit: 'cm/y' },
				...because,
			],
			protocol.basis(
				'growth rate between visits',
				trendOnly ? 'growth.velocityTrendDays' : 'growth.statureReadingSdCm',
			),
		),
	]
	const fast = protocol.value('growth.fastCmPerYear'),
		sure = cmPerYear - errorCmPerYear >= fast
	if (cmPerYear >= fast)
		findings.push(
			finding(
				'growth.fast',
				'advise',
				`${sure ? 'Growth this fast' : `With its error the rate may lie below ${fast} cm a year, but growth that fast`} ` +
					'has been associated with more injuries in one group of boys. Watch the load and the ' +
					'growing heel and knee.',
				[{ measure: 'Growth rate', value: rounded(cmPerYear, 1), unit: 'cm/y' }],
				protocol.basis('fast growth', 'growth.fastCmPerYear'),
			),
		)
	return { velocity: { since, days, cmPerYear, errorCmPerYear, trendOnly }, findings }
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
	const least = protocol.value('growth.footIntervalMinDays')
	const alike = earlier.filter((one) => stanceOf(one) === stanceOf(visit))
	const found = changeSince(visit, alike, longerFootMm, least)
	if (!found || found.days < least) return undefined
	const then = alike.find((one) => one.visitDate === found.since)!
	const limit = protocol.value(
		examinersOf(visit, then) === 'same' ? 'sizing.realLengthSameMm' : 'sizing.realLengthOtherMm',
	)
	return {
		since: found.since,
		days: found.days,
		changeMm: found.change,
		mmPerYear: perYear(found.change, found.days),
		real: rounded(found.change, 4) >= limit,
	}
}
