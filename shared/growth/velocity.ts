import type { Finding } from '../finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { meanOf, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { daysBetween } from './dates.ts'
import { finding } from './says.ts'

const daysPerYear = 365.25
/** Rate per year of a change over a number of days, in the unit of the change. */
export const perYear = (change: number, days: number): number => change / (days / daysPerYear)
/** 95 % error of an annualised rate from two readings with the same standard deviation: 1.96 x root 2 x SD / years. */
export const perYearError = (sd: number, days: number): number => (1.96 * Math.SQRT2 * sd) / (days / daysPerYear)

/** Mean length of the longer foot as measured, mm; undefined where neither is. */
export function longerFootMm(visit: Visit): number | undefined {
	const lengths = [visit.feet?.left?.heelToToeMm, visit.feet?.right?.heelToToeMm].map(meanOf).filter((one) => one !== undefined)
	return lengths.length === 0 ? undefined : Math.max(...lengths)
}
interface Change { days: number; change: number; since: string }
/** The change since the latest earlier visit at least `minDays` ago that has the measure; failing that, since the latest nearer one. */
function changeSince(visit: Visit, earlier: readonly Visit[], of: (visit: Visit) => number | undefined, minDays: number): Change | undefined {
	const now = of(visit)
	if (now === undefined) return undefined
	const found = earlier.map((one) => ({ value: of(one), days: daysBetween(one.visitDate, visit.visitDate), since: one.visitDate })).filter((one) => one.value !== undefined && one.days > 0).sort((a, b) => a.days - b.days)
	const chosen = found.find((one) => one.days >= minDays) ?? found[0]
	return chosen && { days: chosen.days, change: now - chosen.value!, since: chosen.since }
}

/** Stature growth since an earlier visit, as findings: refused, trend only, or a rate with its error (cm/y). */
export function statureVelocity(visit: Visit, earlier: readonly Visit[], protocol: Protocol): Finding[] {
	const least = protocol.value('growth.velocityMinDays')
	const found = changeSince(visit, earlier, (one) => one.body?.statureCm, least)
	if (!found) return []
	const because = [{ measure: 'Change of stature', value: rounded(found.change, 1), unit: 'cm' }, { measure: 'Interval', value: found.days, unit: 'days' }]
	if (found.change < -protocol.value('growth.shrinkCm')) return [finding('growth.shrunk', 'caution', `Stature is lower than on ${found.since}. Measure it again, by the same observer and at the same time of day.`, because, protocol.basis('negative growth', 'growth.shrinkCm'))]
	if (found.days < least) return [finding('growth.velocity-short', 'note', `No growth rate: only ${found.days} days since the stature of ${found.since}; at least ${least} are needed.`, because, protocol.basis('growth rate interval', 'growth.velocityMinDays'))]
	const rate = perYear(found.change, found.days)
	const error = perYearError(protocol.value('growth.statureReadingSdCm'), found.days)
	const trend = found.days < protocol.value('growth.velocityTrendDays')
	const result = [finding('growth.velocity', 'note', `Growth since ${found.since}: ${rounded(rate, 1)} cm a year, give or take ${rounded(error, 1)}${trend ? ' (short interval: a trend only)' : ''}.`, [{ measure: 'Growth rate', value: rounded(rate, 2), unit: 'cm/y' }, { measure: 'Error (95 %)', value: rounded(error, 2), unit: 'cm/y' }, ...because], protocol.basis('growth rate between visits', trend ? 'growth.velocityTrendDays' : 'growth.statureReadingSdCm'))]
	if (rate >= protocol.value('growth.fastCmPerYear')) result.push(finding('growth.fast', 'advise', 'Growth this fast has been associated with more injuries in one group of boys. Watch the load and the growing heel and knee.', [{ measure: 'Growth rate', value: rounded(rate, 1), unit: 'cm/y' }], protocol.basis('fast growth', 'growth.fastCmPerYear')))
	return result
}
/** Foot growth since an earlier visit, mm/y; undefined where not measured twice or too soon. */
export function footRate(visit: Visit, earlier: readonly Visit[], protocol: Protocol): number | undefined {
	const least = protocol.value('growth.footIntervalMinDays')
	const found = changeSince(visit, earlier, longerFootMm, least)
	return found && found.days >= least ? perYear(found.change, found.days) : undefined
}
