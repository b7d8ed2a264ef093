/** The maturity estimates of a visit: which apply, and why the others are absent. */
import type { ByMethod } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import {
	fransenRatioBoys,
	mirwaldBoys,
	mirwaldGirls,
	mooreBoys,
	mooreGirls,
	mooreSittingBoys,
} from './maturity.ts'
import { finding } from './says.ts'

export interface Estimates {
	offsets: ByMethod
	peakAges: ByMethod
	findings: Finding[]
}
type Method = keyof ByMethod
export const methodNames: Record<Method, string> = {
	mirwald: 'Mirwald 2002',
	moore: 'Moore 2015 (stature)',
	mooreSitting: 'Moore 2015 (sitting height)',
	fransen: 'Fransen 2018',
}

/**
 * Offsets in years and ages at peak height velocity, each absent with a finding where it does not
 * apply.
 */
export function maturityEstimates(visit: Visit, ageYears: number, protocol: Protocol): Estimates {
	const offsets: ByMethod = {},
		peakAges: ByMethod = {},
		findings: Finding[] = []
	const boy = visit.player.sex === 'male'
	const { statureCm: h, sittingHeightCm: sh, massKg } = visit.body ?? {}
	const lacking = [
		h === undefined && 'stature',
		sh === undefined && 'sitting height',
		massKg === undefined && 'body mass',
	].filter((one) => one !== false)
	if (lacking.length > 0)
		findings.push(
			finding(
				'growth.offset-missing',
				'note',
				`Not every maturity estimate can be computed: ${lacking.join(', ')} not measured.`,
				[],
				protocol.basis('maturity inputs', 'growth.offsetErrorYears'),
			),
		)
	if (h !== undefined && sh !== undefined) {
		const ratio = sh / h
		const key =
			ratio < protocol.value('growth.sittingRatioMin')
				? 'growth.sittingRatioMin'
				: ratio > protocol.value('growth.sittingRatioMax')
					? 'growth.sittingRatioMax'
					: undefined
		if (key)
			findings.push(
				finding(
					'growth.sitting-ratio',
					'caution',
					'Sitting height is unusual for this stature. Measure it again and take off the height ' +
						'of the stool before using the maturity estimates.',
					[{ measure: 'Sitting height / stature', value: rounded(ratio, 3) }],
					protocol.basis('sitting height plausible', key),
				),
			)
	}
	const lowKey: ThresholdKey = boy ? 'growth.offsetAgeMinBoys' : 'growth.offsetAgeMinGirls',
		highKey: ThresholdKey = boy ? 'growth.offsetAgeMaxBoys' : 'growth.offsetAgeMaxGirls'
	const refuse = (method: Method, says: string, key: ThresholdKey, value: number) =>
		findings.push(
			finding(
				`growth.outside-${method.replace('S', '-s')}`,
				'note',
				says,
				[{ measure: 'Value', value: rounded(value, 2), unit: 'years' }],
				protocol.basis('limits of the maturity equations', key),
			),
		)
	// Judged as shown, so that a ninth birthday (8.9993 by days / 365.25) is nine years.
	const shownAge = rounded(ageYears, 2)
	const add = (
		method: Method,
		extra: [ThresholdKey, ThresholdKey] | undefined,
		offset: () => number,
		peak: (offset: number) => number = (mo) => ageYears - mo,
	) => {
		for (const [low, high] of [[lowKey, highKey] as const, ...(extra ? [extra] : [])]) {
			const key =
				shownAge < protocol.value(low) ? low : shownAge > protocol.value(high) ? high : undefined
			if (key)
				return void refuse(
					method,
					`No maturity estimate by ${methodNames[method]}: at ${shownAge} years the player is ` +
						`outside its ages of ${protocol.value(low)} to ${protocol.value(high)} years.`,
					key,
					shownAge,
				)
		}
		const value = offset()
		const limit = protocol.value('growth.offsetLimitYears')
		if (!Number.isFinite(value) || Math.abs(value) > limit)
			return void refuse(
				method,
				`No maturity estimate by ${methodNames[method]}: the result lies more than ${limit} ` +
					'years from peak height velocity, where the equation does not hold. Check stature, ' +
					'sitting height and mass.',
				'growth.offsetLimitYears',
				Number.isFinite(value) ? value : 0,
			)
		offsets[method] = value
		peakAges[method] = peak(value)
	}
	const fitted: [ThresholdKey, ThresholdKey] = ['growth.mooreAgeMin', 'growth.mooreAgeMax']
	if (h !== undefined) add('moore', fitted, () => (boy ? mooreBoys : mooreGirls)(ageYears, h))
	if (boy && sh !== undefined) add('mooreSitting', fitted, () => mooreSittingBoys(ageYears, sh))
	if (h !== undefined && sh !== undefined && massKg !== undefined) {
		const sized = { ageYears, statureCm: h, sittingHeightCm: sh, massKg }
		add('mirwald', undefined, () => (boy ? mirwaldBoys : mirwaldGirls)(sized))
		if (boy)
			add('fransen', ['growth.fransenAgeMin', 'growth.fransenAgeMax'], () => {
				const ratio = fransenRatioBoys(sized)
				// A ratio of nought or less is no age: refused below as not finite.
				return ratio > 0 ? ageYears - ageYears / ratio : Number.NaN
			})
	}
	return { offsets, peakAges, findings }
}
