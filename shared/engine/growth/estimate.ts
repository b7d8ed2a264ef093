/** The maturity estimates of a visit: which apply, and why the others are absent. */
import type { ByMethod } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Because } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import {
	fransenRatioBoys,
	mirwaldBoys,
	mirwaldGirls,
	mooreBoys,
	mooreGirls,
	mooreSittingBoys,
	peakAge,
	peakAgeByRatio,
} from './maturity.ts'
import { growthFinding } from './says.ts'

export interface Estimates {
	offsets: ByMethod
	peakAges: ByMethod
	findings: Finding[]
}
export type Method = keyof ByMethod
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
	ratio > 0 ? ageYears - peakAgeByRatio(ageYears, ratio).value : Number.NaN

function candidates(visit: Visit, ageYears: number): Candidate[] {
	const { sex } = visit.player
	const { statureCm, sittingHeightCm, massKg } = bodySize(visit)
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
/** Why a method gives no estimate; the id names the method. */
const refusal = (
	method: Method,
	statement: Statement,
	because: Because,
	key: ThresholdKey,
	protocol: Protocol,
): Finding =>
	growthFinding(
		statement,
		'note',
		[because],
		protocol.basis('limits of the maturity equations', key),
		`growth.outside-${method.replace('S', '-s')}`,
	)
/** Says so where the player is outside the ages of a method. */
function ageRefusal(
	method: Method,
	sex: 'male' | 'female',
	decimalAge: number,
	protocol: Protocol,
): Finding | undefined {
	// Judged as shown, so that a ninth birthday (8.9993 by days / 365.25) is nine years.
	const ageYears = rounded(decimalAge, 2)
	for (const [lowKey, highKey] of limitsOf(method, sex)) {
		const [low, high] = [protocol.value(lowKey), protocol.value(highKey)]
		if (ageYears >= low && ageYears <= high) continue
		return refusal(
			method,
			state('growth.outside-ages', { method, ageYears, low, high }),
			{ measure: 'ageYears', value: ageYears, unit: 'years' },
			ageYears < low ? lowKey : highKey,
			protocol,
		)
	}
	return undefined
}
/** Says so where an equation gives what it cannot hold for. */
function resultRefusal(method: Method, offset: number, protocol: Protocol): Finding | undefined {
	const limitYears = protocol.value('growth.offsetLimitYears')
	if (Number.isFinite(offset) && Math.abs(offset) <= limitYears) return undefined
	const value = Number.isFinite(offset) ? rounded(offset, 2) : 0
	return refusal(
		method,
		state('growth.outside-result', { method, limitYears }),
		{ measure: 'maturityOffsetYears', value, unit: 'years' },
		'growth.offsetLimitYears',
		protocol,
	)
}
const inputs = ['statureCm', 'sittingHeightCm', 'massKg'] as const
function missingFindings({ body }: Visit, protocol: Protocol): Finding[] {
	const lacking = inputs.filter((measure) => body?.[measure] === undefined)
	if (lacking.length === 0) return []
	return [
		growthFinding(
			state('growth.offset-missing', { lacking }),
			'note',
			[],
			protocol.basis('maturity inputs', 'growth.offsetErrorYears'),
		),
	]
}
/** Says so where sitting height and stature do not go together. */
function sittingRatioFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { statureCm, sittingHeightCm } = bodySize(visit)
	if (statureCm === undefined || sittingHeightCm === undefined) return []
	const ratio = sittingHeightCm / statureCm
	const low = ratio < protocol.value('growth.sittingRatioMin')
	if (!low && ratio <= protocol.value('growth.sittingRatioMax')) return []
	return [
		growthFinding(
			state('growth.sitting-ratio'),
			'caution',
			[{ measure: 'sittingRatio', value: rounded(ratio, 3) }],
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
			peakAges[method] = peakAge(ageYears, offset).value
		}
	}
	return { offsets, peakAges, findings }
}
