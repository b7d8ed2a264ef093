/**
 * Leg-length difference: what to do by its size, and how much to correct. Clinical tests err by 5
 * mm and more.
 */

import type { LegLength } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

/**
 * Staged first lift, mm: less than difference / (duration + compensation); Heilig, expert opinion
 * as read in an encyclopedia. @throws RangeError when the divisor is not positive
 */
export function firstLiftBelowMm(
	differenceMm: number,
	duration: number,
	compensation: number,
): number {
	if (!(duration + compensation > 0))
		throw new RangeError(
			`duration + compensation: ${duration + compensation} given, give a sum above 0`,
		)
	return differenceMm / (duration + compensation)
}
/** Duration 1 to 10 years, 2 to 30 years, 3 beyond; Heilig. */
export const durationFactor = (years: number): number => (years < 10 ? 1 : years < 30 ? 2 : 3)
export const compensationFactor = { none: 0, 'side-bending': 1, bony: 2 } as const

/** The row that decides, by size. */
export function legLengthKey(differenceMm: number, protocol: Protocol): ThresholdKey {
	return differenceMm >= protocol.value('posture.legLengthReferMm')
		? 'posture.legLengthReferMm'
		: differenceMm >= protocol.value('posture.legLengthConsiderMm')
			? 'posture.legLengthConsiderMm'
			: 'posture.legLengthRecordMm'
}
/** The verdict, with its finding added; undefined where nothing was recorded. */
export function legLengthOf(
	visit: Visit,
	protocol: Protocol,
	findings: Finding[],
): LegLength | undefined {
	const {
		legLengthDifferenceMm: differenceMm,
		shorterLeg: shorter,
		legLengthYears,
		legLengthCompensation,
	} = visit.body ?? {}
	if (differenceMm === undefined) return undefined
	const key = legLengthKey(differenceMm, protocol),
		below = differenceMm < protocol.value('posture.legLengthRecordMm')
	const growing =
		ageYears(visit.player.birthDate, visit.visitDate) < protocol.value('posture.adultFromYears')
	const action: LegLength['action'] =
		key === 'posture.legLengthReferMm'
			? 'refer'
			: key === 'posture.legLengthConsiderMm'
				? 'consider'
				: below
					? 'record-only'
					: 'only-if-symptomatic'
	const symptoms = legLengthSymptomatic(visit)
	const hold = growing && !symptoms && action !== 'refer'
	const corrects =
		!hold && (action === 'consider' || (action === 'only-if-symptomatic' && symptoms))
	const correctionMm = corrects
		? {
				min: rounded(differenceMm * protocol.value('posture.legLengthShareMin'), 1),
				max: rounded(differenceMm * protocol.value('posture.legLengthShareMax'), 1),
			}
		: undefined
	const startBelowMm =
		correctionMm && legLengthYears !== undefined && legLengthCompensation
			? firstLiftBelowMm(
					differenceMm,
					durationFactor(legLengthYears),
					compensationFactor[legLengthCompensation],
				)
			: undefined
	const range = correctionMm
		? ` Start with ${correctionMm.min} to ${correctionMm.max} mm ` +
			`(${rounded(100 * protocol.value('posture.legLengthShareMin'), 0)} to ` +
			`${rounded(100 * protocol.value('posture.legLengthShareMax'), 0)} %), in the shoe first, ` +
			'then on the outsole, and measure again.'
		: ''
	const words: Record<LegLength['action'], string> = {
		'record-only': 'is below the error of the clinical test: record it only.',
		'only-if-symptomatic': symptoms
			? `is corrected only with symptoms, and symptoms are recorded.${range}`
			: 'is corrected only where there are symptoms.',
		consider: `may be worth correcting.${range}`,
		refer: 'is large: refer for measurement by imaging before correcting.',
	}
	const says =
		hold && !below
			? `The leg-length difference of ${differenceMm} mm is without symptoms in a growing ` +
				'player: do not correct it from a clinical test alone; measure again or refer.'
			: `The leg-length difference of ${differenceMm} mm ${words[action]}`
	if (shorter && differenceMm > 0)
		findings.push({
			id: `posture.leg-length.${shorter}`,
			topic: 'posture',
			side: shorter,
			level: action === 'refer' ? 'caution' : below ? 'note' : 'advise',
			says,
			because: [
				{ measure: 'leg-length difference', value: differenceMm, unit: 'mm' },
				{ measure: 'shorter leg', value: shorter },
			],
			basis: protocol.basis('leg-length difference', key),
		})
	else if (!below)
		findings.push({
			id: 'posture.leg-length.none',
			topic: 'posture',
			side: 'none',
			level: action === 'refer' ? 'caution' : 'advise',
			says: `${says} Record which leg is the shorter one.`,
			because: [{ measure: 'leg-length difference', value: differenceMm, unit: 'mm' }],
			basis: protocol.basis('leg-length difference', key),
		})
	return {
		differenceMm,
		...(shorter ? { shorter } : {}),
		action,
		...(correctionMm ? { correctionMm } : {}),
		...(startBelowMm === undefined ? {} : { startBelowMm }),
	}
}
