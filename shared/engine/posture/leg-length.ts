/**
 * Leg-length difference: what to do by its size, and how much to correct. Clinical tests err by 5
 * mm and more.
 */

import { isMinor } from '../facts/age.ts'
import type { LegLength } from '../findings/assessment.ts'
import { type Finding, type Level, sayFinding } from '../findings/finding.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

/**
 * Staged first lift, mm: less than difference / (duration + compensation); Heilig, expert opinion
 * as read in an encyclopedia. @throws RangeError when the divisor is not positive
 * @internal
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
export function durationFactor(years: number): number {
	if (years < 10) return 1
	return years < 30 ? 2 : 3
}
/** Compensation of the spine, by Heilig. */
export const compensationFactor = { none: 0, 'side-bending': 1, bony: 2 } as const

/** The row that decides, by size. */
export function legLengthKey(differenceMm: number, protocol: Protocol): ThresholdKey {
	if (differenceMm >= protocol.value('posture.legLengthReferMm')) return 'posture.legLengthReferMm'
	return differenceMm >= protocol.value('posture.legLengthConsiderMm')
		? 'posture.legLengthConsiderMm'
		: 'posture.legLengthRecordMm'
}
type Action = LegLength['action']
/** Whether a difference is below the error of the clinical test. */
const isBelowError = (differenceMm: number, protocol: Protocol): boolean =>
	differenceMm < protocol.value('posture.legLengthRecordMm')
/** What to do about a difference, by its size alone. */
function actionBySize(differenceMm: number, protocol: Protocol): Action {
	const key = legLengthKey(differenceMm, protocol)
	if (key === 'posture.legLengthReferMm') return 'refer'
	if (key === 'posture.legLengthConsiderMm') return 'consider'
	return isBelowError(differenceMm, protocol) ? 'record-only' : 'only-if-symptomatic'
}
/** A growing player without symptoms is not corrected from a clinical test alone. */
function isHeldBack(visit: Visit, action: Action, protocol: Protocol): boolean {
	const growing = isMinor(visit, protocol)
	return growing && !legLengthSymptomatic(visit) && action !== 'refer'
}
function isCorrected(visit: Visit, action: Action, protocol: Protocol): boolean {
	if (isHeldBack(visit, action, protocol)) return false
	return action === 'consider' || (action === 'only-if-symptomatic' && legLengthSymptomatic(visit))
}
/** The verdict; undefined where nothing was recorded. Lengths in mm. */
export function legLengthOf(visit: Visit, protocol: Protocol): LegLength | undefined {
	const {
		legLengthDifferenceMm: differenceMm,
		shorterLeg: shorter,
		legLengthYears: years,
		legLengthCompensation: compensation,
	} = visit.body ?? {}
	if (differenceMm === undefined) return undefined
	const action = actionBySize(differenceMm, protocol)
	if (!isCorrected(visit, action, protocol)) return present({ differenceMm, shorter, action })
	const correctionMm = {
		min: rounded(differenceMm * protocol.value('posture.legLengthShareMin'), 1),
		max: rounded(differenceMm * protocol.value('posture.legLengthShareMax'), 1),
	}
	const startBelowMm =
		years === undefined || !compensation
			? undefined
			: firstLiftBelowMm(differenceMm, durationFactor(years), compensationFactor[compensation])
	return present({ differenceMm, shorter, action, correctionMm, startBelowMm })
}
/** How to begin a correction, and by how much; empty where none is proposed. */
function startWords(correctionMm: LegLength['correctionMm'], protocol: Protocol): string {
	if (!correctionMm) return ''
	const percent = (key: ThresholdKey) => rounded(100 * protocol.value(key), 0)
	return (
		` Start with ${correctionMm.min} to ${correctionMm.max} mm ` +
		`(${percent('posture.legLengthShareMin')} to ${percent('posture.legLengthShareMax')} %), in ` +
		'the shoe first, then on the outsole, and measure again.'
	)
}
function saysOf(
	visit: Visit,
	{ differenceMm, action, correctionMm }: LegLength,
	protocol: Protocol,
) {
	const what = `The leg-length difference of ${differenceMm} mm`
	if (!isBelowError(differenceMm, protocol) && isHeldBack(visit, action, protocol))
		return (
			`${what} is without symptoms in a growing player: do not correct it from a clinical test ` +
			'alone; measure again or refer.'
		)
	const start = startWords(correctionMm, protocol)
	const words: Record<Action, string> = {
		'record-only': 'is below the error of the clinical test: record it only.',
		'only-if-symptomatic': legLengthSymptomatic(visit)
			? `is corrected only with symptoms, and symptoms are recorded.${start}`
			: 'is corrected only where there are symptoms.',
		consider: `may be worth correcting.${start}`,
		refer: 'is large: refer for measurement by imaging before correcting.',
	}
	return `${what} ${words[action]}`
}
function levelOf({ differenceMm, action }: LegLength, protocol: Protocol): Level {
	if (action === 'refer') return 'caution'
	return isBelowError(differenceMm, protocol) ? 'note' : 'advise'
}
/** A finding about a recorded difference; none for nought or for one below error without a side. */
export function legLengthFindings(visit: Visit, protocol: Protocol): Finding[] {
	const found = legLengthOf(visit, protocol)
	if (!found) return []
	const { differenceMm, shorter } = found
	const difference = { measure: 'leg-length difference', value: differenceMm, unit: 'mm' }
	const says = saysOf(visit, found, protocol)
	const common = {
		topic: 'posture',
		rule: 'leg-length',
		level: levelOf(found, protocol),
		basis: protocol.basis('leg-length difference', legLengthKey(differenceMm, protocol)),
	} as const
	if (shorter && differenceMm > 0) {
		const because = [difference, { measure: 'shorter leg', value: shorter }]
		return [sayFinding({ ...common, side: shorter, says, because })]
	}
	if (isBelowError(differenceMm, protocol)) return []
	const alsoAsk = `${says} Record which leg is the shorter one.`
	return [sayFinding({ ...common, side: 'none', says: alsoAsk, because: [difference] })]
}
