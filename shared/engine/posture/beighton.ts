/**
 * Beighton score by maturity, not by age alone; it scores mostly the upper limb and is no foot
 * measure.
 */

import type { Beighton } from '../findings/assessment.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import type { Visit } from '../visit/visit.ts'

/**
 * The cut-off row that applies: by recorded maturity; an adult is mature; undefined where a minor's
 * maturity is not recorded.
 */
export function beightonKey(visit: Visit, protocol: Protocol): ThresholdKey | undefined {
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	if (age > protocol.value('posture.beightonOlderAfterYears')) return 'posture.beightonOlder'
	const maturity =
		visit.body?.puberty ?? (age >= protocol.value('posture.adultFromYears') ? 'after' : undefined)
	return maturity === undefined
		? undefined
		: maturity === 'after'
			? 'posture.beightonMature'
			: 'posture.beightonGrowing'
}
/**
 * The verdict, with its finding added; undefined where no score was recorded. One below the
 * cut-off, two yes answers of five count.
 */
export function beightonOf(
	visit: Visit,
	protocol: Protocol,
	findings: Finding[],
): Beighton | undefined {
	const score = visit.body?.beighton
	if (score === undefined) return undefined
	const key = beightonKey(visit, protocol)
	const add = (rule: string, level: Finding['level'], says: string, basis: ThresholdKey) =>
		findings.push({
			id: `posture.${rule}.none`,
			topic: 'posture',
			side: 'none',
			level,
			says,
			because: [
				{ measure: 'Beighton score', value: score, unit: '/9' },
				...(visit.body?.hypermobilityHistory === undefined
					? []
					: [{ measure: 'yes answers', value: visit.body.hypermobilityHistory, unit: '/5' }]),
			],
			basis: protocol.basis('Beighton score by maturity', basis),
		})
	if (key === undefined) {
		add(
			'beighton-maturity',
			'note',
			`A Beighton score of ${score} cannot be judged until the player's maturity is recorded: ` +
				'before, during or after puberty.',
			'posture.beightonGrowing',
		)
		return { score, state: 'maturity-unknown', askHistory: false }
	}
	const cutOff = protocol.value(key),
		history = visit.body?.hypermobilityHistory
	const near = score === cutOff - 1,
		byHistory =
			near && history !== undefined && history >= protocol.value('posture.beightonHistory')
	if (score >= cutOff || byHistory)
		add(
			'beighton',
			'note',
			`The Beighton score is ${score}: generalised hypermobility by the cut-off of ${cutOff} ` +
				`for this maturity${byHistory ? ', counting the history answers' : ''}. It is scored ` +
				'mostly on the arms and says little about the foot.',
			key,
		)
	else if (near && history === undefined)
		add(
			'beighton-near',
			'note',
			`The Beighton score of ${score} is one below the cut-off of ${cutOff}: ask the five ` +
				'history questions; two yes answers count.',
			'posture.beightonHistory',
		)
	return {
		score,
		cutOff,
		state: score >= cutOff || byHistory ? 'met' : 'not-met',
		askHistory: near && history === undefined,
	}
}
