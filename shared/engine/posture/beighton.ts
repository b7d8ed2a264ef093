/**
 * Beighton score by maturity, not by age alone; it scores mostly the upper limb and is no foot
 * measure.
 */

import type { Beighton } from '../findings/assessment.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'

/**
 * The cut-off row that applies: by recorded maturity; an adult is mature; undefined where a minor's
 * maturity is not recorded.
 */
export function beightonKey(visit: Visit, protocol: Protocol): ThresholdKey | undefined {
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	if (age > protocol.value('posture.beightonOlderAfterYears')) return 'posture.beightonOlder'
	const maturity =
		visit.body?.puberty ?? (age >= protocol.value('posture.adultFromYears') ? 'after' : undefined)
	if (maturity === undefined) return undefined
	return maturity === 'after' ? 'posture.beightonMature' : 'posture.beightonGrowing'
}
/** The score against its cut-off. `near`: one below it, where the history answers count. */
interface Judged {
	key: ThresholdKey
	cutOff: number
	met: boolean
	near: boolean
	byHistory: boolean
}
function judge(
	score: number,
	key: ThresholdKey,
	history: number | undefined,
	protocol: Protocol,
): Judged {
	const cutOff = protocol.value(key)
	const near = score === cutOff - 1
	const byHistory =
		near && history !== undefined && history >= protocol.value('posture.beightonHistory')
	return { key, cutOff, met: score >= cutOff || byHistory, near, byHistory }
}
/** The verdict; undefined where no score was recorded. */
export function beightonOf(visit: Visit, protocol: Protocol): Beighton | undefined {
	const { beighton: score, hypermobilityHistory: history } = visit.body ?? {}
	if (score === undefined) return undefined
	const key = beightonKey(visit, protocol)
	if (key === undefined) return { score, state: 'maturity-unknown', askHistory: false }
	const { cutOff, met, near } = judge(score, key, history, protocol)
	return {
		score,
		cutOff,
		state: met ? 'met' : 'not-met',
		askHistory: near && history === undefined,
	}
}
/** What is said of the score: unjudged, met, or near, where some history answers count. */
function saying(
	score: number,
	judged: Judged | undefined,
	asked: boolean,
	protocol: Protocol,
): { statement: Statement; key: ThresholdKey } | undefined {
	if (judged === undefined)
		return {
			statement: state('posture.beighton-maturity', { score }),
			key: 'posture.beightonGrowing',
		}
	const { key, cutOff, met, near, byHistory } = judged
	if (met) return { statement: state('posture.beighton', { score, cutOff, byHistory }), key }
	if (!near || asked) return undefined
	const answers = protocol.value('posture.beightonHistory')
	return {
		statement: state('posture.beighton-near', { score, cutOff, answers }),
		key: 'posture.beightonHistory',
	}
}
/** A finding where the score says something, or cannot be judged. */
export function beightonFindings(visit: Visit, protocol: Protocol): Finding[] {
	const { beighton: score, hypermobilityHistory: history } = visit.body ?? {}
	if (score === undefined) return []
	const key = beightonKey(visit, protocol)
	const judged = key && judge(score, key, history, protocol)
	const said = saying(score, judged, history !== undefined, protocol)
	if (!said) return []
	return [
		findingOf(said.statement, {
			side: 'none',
			level: 'note',
			because: [
				{ measure: 'beighton', value: score, unit: '/9' },
				...(history === undefined
					? []
					: [{ measure: 'hypermobilityHistory', value: history, unit: '/5' }]),
			],
			basis: protocol.basis('Beighton score by maturity', said.key),
		}),
	]
}
