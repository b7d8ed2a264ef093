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
export type Method = keyof ByMethod
export const methodNames: Record<Method, string> = {
	mirwald: 'Mirwald 2002',
	moore: 'Moore 2015 (stature)',
	mooreSitting: 'Moore 2015 (sitting height)',
	fransen: 'Fransen 2018',
}
type Limits = readonly [low: ThresholdKey, high: ThresholdKey]
const offsetAges: Record<'male' | 'female', Limits> = {
	male: ['growth.offsetAgeMinBoys', 'growth.offsetAgeMaxBoys'],
	female: ['growth.offsetAgeMinGirls', 'growth.offsetAgeMaxGirls'],
}
const mooreAges: Limits = ['growth.mooreAgeMin', 'growth.mooreAgeMax']
/** The ages of each method beside those that hold for all of a sex. */
const ownAges: Record<Method, Limits | undefined> = {
	mirwald: undefined,
	moore: mooreAges,
	mooreSitting: mooreAges,
	fransen: ['growth.fransenAgeMin', 'growth.fransenAgeMax'],
}
const limitsOf = (method: Method, sex: 'male' | 'female'): Limits[] => {
	const own = ownAges[method]
	return own ? [offsetAges[sex], own] : [offsetAges[sex]]
}
/** The ages that a working names for a method, years; of Fransen's only its own. */
export function agesOf(
	method: Method,
	sex: 'male' | 'female',
	protocol: Protocol,
): { low: number; high: number } {
	const own = ownAges[method]
	const limits = method === 'fransen' && own ? [own] : limitsOf(method, sex)
	return {
		low: Math.max(...limits.map(([low]) => protocol.value(low))),
		high: Math.min(...limits.map(([, high]) => protocol.value(high))),
	}
}
/** A method that the measures of a visit allow, with its offset in years. */
interface Candidate {
	method: Method
	offset: number
}
/** Age less the age at peak height velocity; a ratio of nought or less is no age. */
const offsetByRatio = (ageYears: number, ratio: number): number =>
	ratio > 0 ? ageYears - ageYears / ratio : Number.NaN

function candidates(visit: Visit, ageYears: number): Candidate[] {
	const { sex } = visit.player
	const { statureCm, sittingHeightCm, massKg } = visit.body ?? {}
	const boy = sex === 'male'
	const found: Candidate[] = []
	if (statureCm !== undefined)
		found.push({
			method: 'moore',
			offset: (boy ? mooreBoys : mooreGirls)(ageYears, statureCm),
		})
	if (boy && sittingHeightCm !== undefined)
		found.push({
			method: 'mooreSitting',
			offset: mooreSittingBoys(ageYears, sittingHeightCm),
		})
	if (statureCm === undefined || sittingHeightCm === undefined || massKg === undefined) return found
	const sized = { ageYears, statureCm, sittingHeightCm, massKg }
	found.push({
		method: 'mirwald',
		offset: (boy ? mirwaldBoys : mirwaldGirls)(sized),
	})
	if (boy)
		found.push({
			method: 'fransen',
			offset: offsetByRatio(ageYears, fransenRatioBoys(sized)),
		})
	return found
}
const refusal = (
	method: Method,
	says: string,
	key: ThresholdKey,
	value: number,
	protocol: Protocol,
): Finding =>
	finding(
		`growth.outside-${method.replace('S', '-s')}`,
		'note',
		says,
		[{ measure: 'Value', value: rounded(value, 2), unit: 'years' }],
		protocol.basis('limits of the maturity equations', key),
	)
/** Says so where the player is outside the ages of a method. */
function ageRefusal(
	method: Method,
	sex: 'male' | 'female',
	ageYears: number,
	protocol: Protocol,
): Finding | undefined {
	// Judged as shown, so that a ninth birthday (8.9993 by days / 365.25) is nine years.
	const shownAge = rounded(ageYears, 2)
	for (const [lowKey, highKey] of limitsOf(method, sex)) {
		const [low, high] = [protocol.value(lowKey), protocol.value(highKey)]
		if (shownAge >= low && shownAge <= high) continue
		return refusal(
			method,
			`No maturity estimate by ${methodNames[method]}: at ${shownAge} years the player is ` +
				`outside its ages of ${low} to ${high} years.`,
			shownAge < low ? lowKey : highKey,
			shownAge,
			protocol,
		)
	}
	return undefined
}
/** Says so where an equation gives what it cannot hold for. */
function resultRefusal(method: Method, offset: number, protocol: Protocol): Finding | undefined {
	const limit = protocol.value('growth.offsetLimitYears')
	if (Number.isFinite(offset) && Math.abs(offset) <= limit) return undefined
	return refusal(
		method,
		`No maturity estimate by ${methodNames[method]}: the result lies more than ${limit} ` +
			'years from peak height velocity, where the equation does not hold. Check stature, ' +
			'sitting height and mass.',
		'growth.offsetLimitYears',
		Number.isFinite(offset) ? offset : 0,
		protocol,
	)
}
function missingFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { statureCm, sittingHeightCm, massKg } = visit.body ?? {}
	const lacking = [
		statureCm === undefined && 'stature',
		sittingHeightCm === undefined && 'sitting height',
		massKg === undefined && 'body mass',
	].filter((measure) => measure !== false)
	if (lacking.length === 0) return []
	return [
		finding(
			'growth.offset-missing',
			'note',
			`Not every maturity estimate can be computed: ${lacking.join(', ')} not measured.`,
			[],
			protocol.basis('maturity inputs', 'growth.offsetErrorYears'),
		),
	]
}
/** Says so where sitting height and stature do not go together. */
function sittingRatioFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { statureCm, sittingHeightCm } = visit.body ?? {}
	if (statureCm === undefined || sittingHeightCm === undefined) return []
	const ratio = sittingHeightCm / statureCm
	const low = ratio < protocol.value('growth.sittingRatioMin')
	if (!low && ratio <= protocol.value('growth.sittingRatioMax')) return []
	return [
		finding(
			'growth.sitting-ratio',
			'caution',
			'Sitting height is unusual for this stature. Measure it again and take off the height ' +
				'of the stool before using the maturity estimates.',
			[{ measure: 'Sitting height / stature', value: rounded(ratio, 3) }],
			protocol.basis(
				'sitting height plausible',
				low ? 'growth.sittingRatioMin' : 'growth.sittingRatioMax',
			),
		),
	]
}
/**
 * Offsets in years and ages at peak height velocity, each absent with a finding where it does not
 * apply.
 */
export function maturityEstimates(visit: Visit, ageYears: number, protocol: Protocol): Estimates {
	const offsets: ByMethod = {}
	const peakAges: ByMethod = {}
	const findings = [...missingFindings(visit, protocol), ...sittingRatioFindings(visit, protocol)]
	for (const { method, offset } of candidates(visit, ageYears)) {
		const refused =
			ageRefusal(method, visit.player.sex, ageYears, protocol) ??
			resultRefusal(method, offset, protocol)
		if (refused) findings.push(refused)
		else {
			offsets[method] = offset
			peakAges[method] = ageYears - offset
		}
	}
	return { offsets, peakAges, findings }
}
