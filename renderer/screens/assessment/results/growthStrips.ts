/** Growth as scales: ages round the growth spurt, and the share of adult stature, with error. Pure. */

import type { GrowthResult, StageMethod } from '../../../../shared/engine/findings/assessment.ts'
import { offsetErrorKey } from '../../../../shared/engine/growth/maturity-workings.ts'
import type { Protocol } from '../../../../shared/engine/protocol/protocol.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { number } from '../../../../shared/engine/words/en/format.ts'
import { offsetMethodWords } from '../../../../shared/engine/words/en/growth-maturity.ts'
import { endsOf, type Strip, type StripZone } from './strip.ts'

type Offset = Exclude<StageMethod, 'percentAdultStature'>
/** The offset that is drawn: the one that the stage rests on, else the first that was worked out. */
export function offsetDrawn({ method, maturityOffsetYears }: GrowthResult): Offset | undefined {
	const order: readonly Offset[] = ['mirwald', 'moore']
	const own = order.find((each) => each === method)
	const drawn = own ?? order.find((each) => maturityOffsetYears[each] !== undefined)
	return drawn !== undefined && maturityOffsetYears[drawn] !== undefined ? drawn : undefined
}
/** One standard error of a method, years, as it is published for this sex. */
const errorYearsOf = (method: Offset, visit: Visit, protocol: Protocol): number =>
	protocol.value(offsetErrorKey(method, visit.player.sex))

/** Before, around and after the spurt: around from one value to the other. */
const zonesOf = (ends: { low: number; high: number }, from: number, to: number): StripZone[] => [
	{ from: ends.low, to: from, name: 'before', lit: false },
	{ from, to, name: 'around', lit: true },
	{ from: to, to: ends.high, name: 'after', lit: false },
]
/** Age now, and the age at peak height velocity with its error; undefined without an estimate. */
export function ageStrip(
	growth: GrowthResult,
	visit: Visit,
	protocol: Protocol,
): Strip | undefined {
	const method = offsetDrawn(growth)
	const peak = method && growth.ageAtPeakHeightVelocityYears[method]
	if (method === undefined || peak === undefined) return undefined
	const now = growth.decimalAgeYears
	const error = errorYearsOf(method, visit, protocol)
	const around = protocol.value('growth.offsetAroundYears')
	const ends = endsOf([now - 1.5, now + 1.5], [peak - around - 1, peak + around + 1], 1)
	const [from, to] = [peak - around, peak + around]
	return {
		key: 'age',
		title: 'Age, years',
		aside: `estimate, ${offsetMethodWords[method]}`,
		...ends,
		zones: zonesOf(ends, from, to),
		limits: [],
		lanes: [
			{ name: 'now', says: number(now), marks: [{ value: now, filled: true }] },
			{
				name: 'spurt',
				says: `about ${number(peak)}`,
				marks: [{ value: peak, filled: false, low: peak - error, high: peak + error }],
			},
		],
		note: `fastest growth, error about ${number(error)} years (one standard error); around: ${number(around)} year either side`,
	}
}
/** The share of the predicted adult stature, with the range that its error gives. */
export function shareStrip(growth: GrowthResult, protocol: Protocol): Strip | undefined {
	const { percentAdultStature: share, percentAdultStatureRange: range } = growth
	if (share === undefined) return undefined
	const from = protocol.value('growth.percentAroundMin')
	const to = protocol.value('growth.percentAroundMax')
	const ends = endsOf([75, 100], [share, ...(range ? [range.low] : [])])
	return {
		key: 'share',
		title: 'Share of predicted adult stature, %',
		aside: 'estimate',
		...ends,
		zones: zonesOf(ends, from, to),
		limits: [],
		lanes: [
			{ name: 'now', says: number(share), marks: [{ value: share, filled: true, ...range }] },
		],
		note: range
			? `nine in ten predictions lie within ${number(range.low)} to ${number(range.high)} %`
			: 'its error is not known',
	}
}
