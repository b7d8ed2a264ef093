/**
 * Leg-length difference: what to do by its size, and how much to correct. Clinical tests err by 5
 * mm and more.
 */

import { isMinor } from '../facts/age.ts'
import type { LegLength } from '../findings/assessment.ts'
import { type Finding, findingOf, type Level } from '../findings/finding.ts'
import { exactly, type Formula, over, plus, quantity, times } from '../findings/formula.ts'
import { present } from '../plain/present.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { legLengthSymptomatic } from '../visit/leg-length.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'

/**
 * Staged first lift, mm: less than difference / (duration + compensation); Heilig, expert opinion
 * as read in an encyclopedia. @throws RangeError when the divisor is not positive @internal
 */
export function firstLiftBelowMm(
	differenceMm: number,
	duration: number,
	compensation: number,
): Formula {
	if (!(duration + compensation > 0))
		throw new RangeError(
			`duration + compensation: ${duration + compensation} given, give a sum above 0`,
		)
	return over(quantity(differenceMm, 1), plus(exactly(duration), exactly(compensation)))
}
/** Duration 1 to 10 years, 2 to 30 years, 3 beyond; Heilig. @internal */
export function durationFactor(years: number): number {
	if (years < 10) return 1
	return years < 30 ? 2 : 3
}
/** Compensation of the spine, by Heilig. */
const compensationFactor = { none: 0, 'side-bending': 1, bony: 2 } as const

/** The staged first lift of a visit, mm; undefined where duration or compensation is not recorded. */
export function firstLift({ body }: Visit, differenceMm: number): Formula | undefined {
	const { legLengthYears: years, legLengthCompensation: compensation } = body ?? {}
	return years === undefined || compensation === undefined
		? undefined
		: firstLiftBelowMm(differenceMm, durationFactor(years), compensationFactor[compensation])
}
/** How much of a difference is corrected, mm: the least and the most. */
export function correctionOf(
	differenceMm: number,
	protocol: Protocol,
): { min: Formula; max: Formula } {
	const share = (key: ThresholdKey) =>
		times(quantity(differenceMm, 1), exactly(protocol.value(key)))
	return { min: share('posture.legLengthShareMin'), max: share('posture.legLengthShareMax') }
}
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
/**
 * The verdict; undefined where nothing was recorded. Lengths in mm. @param raiseHeld no correction is
 * given
 */
export function legLengthOf(
	visit: Visit,
	protocol: Protocol,
	raiseHeld = false,
): LegLength | undefined {
	const { legLengthDifferenceMm: differenceMm, shorterLeg: shorter } = visit.body ?? {}
	if (differenceMm === undefined) return undefined
	const action = actionBySize(differenceMm, protocol)
	if (raiseHeld || !isCorrected(visit, action, protocol))
		return present({ differenceMm, shorter, action })
	const { min, max } = correctionOf(differenceMm, protocol)
	const correctionMm = { min: rounded(min.value, 1), max: rounded(max.value, 1) }
	const startBelowMm = firstLift(visit, differenceMm)?.value
	return present({ differenceMm, shorter, action, correctionMm, startBelowMm })
}
/** How to begin a correction, and by how much; undefined where none is proposed. */
function startOf(correctionMm: LegLength['correctionMm'], protocol: Protocol) {
	if (!correctionMm) return undefined
	const percent = (key: ThresholdKey) => rounded(100 * protocol.value(key), 0)
	return {
		minMm: correctionMm.min,
		maxMm: correctionMm.max,
		minPercent: percent('posture.legLengthShareMin'),
		maxPercent: percent('posture.legLengthShareMax'),
	}
}
function statementOf(
	visit: Visit,
	{ differenceMm, action, correctionMm, shorter }: LegLength,
	protocol: Protocol,
	raiseHeld: boolean,
): Statement {
	const known = { differenceMm, shorterKnown: shorter !== undefined }
	if (isBelowError(differenceMm, protocol))
		return state('posture.leg-length-record', { differenceMm })
	if (raiseHeld) return state('posture.leg-length-waits', known)
	if (isHeldBack(visit, action, protocol)) return state('posture.leg-length-held', known)
	if (action === 'refer') return state('posture.leg-length-refer', known)
	const begun = present({ ...known, start: startOf(correctionMm, protocol) })
	return action === 'consider'
		? state('posture.leg-length-consider', begun)
		: state('posture.leg-length-symptoms', { ...begun, symptoms: legLengthSymptomatic(visit) })
}
function levelOf({ differenceMm, action }: LegLength, protocol: Protocol): Level {
	if (action === 'refer') return 'caution'
	return isBelowError(differenceMm, protocol) ? 'note' : 'advise'
}
/** A finding about a recorded difference; none for nought or for one below error without a side. */
export function legLengthFindings(visit: Visit, protocol: Protocol, raiseHeld: boolean): Finding[] {
	const found = legLengthOf(visit, protocol, raiseHeld)
	if (!found) return []
	const { differenceMm, shorter } = found
	const ofShorter = shorter !== undefined && differenceMm > 0
	if (!ofShorter && isBelowError(differenceMm, protocol)) return []
	const side = ofShorter ? shorter : 'none'
	const difference = { measure: 'legLengthDifferenceMm', value: differenceMm, unit: 'mm' }
	return [
		findingOf(statementOf(visit, found, protocol, raiseHeld), {
			id: `posture.leg-length.${side}`,
			side,
			level: levelOf(found, protocol),
			because: ofShorter ? [difference, { measure: 'shorterLeg', value: shorter }] : [difference],
			basis: protocol.basis('leg-length difference', legLengthKey(differenceMm, protocol)),
		}),
	]
}
