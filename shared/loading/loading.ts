/** The loading room: weekly hours of young players, and the order of size of the forces in a sidestep. */
import type { LoadingResult } from '../assessment.ts'
import type { Because, Basis, Finding, Level } from '../finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

const gravity = 9.81
const finding = (id: string, level: Level, says: string, because: Because[], basis: Basis): Finding => ({ id, topic: 'loading', side: 'none', level, says, because, basis })

/** Youth load rules (associations, not forecasts) and peak sidestep force in newtons where mass is known. */
export function loading(visit: Visit, protocol: Protocol): LoadingResult {
	const findings: Finding[] = []
	const { organisedHoursPerWeek: organised, freePlayHoursPerWeek: free } = visit.play ?? {}
	const mass = visit.body?.massKg
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const ratio = organised !== undefined && free !== undefined && free > 0 ? organised / free : undefined
	if (age < protocol.value('loading.youthBelowYears') && organised !== undefined) {
		const hours = { measure: 'Organised sport', value: organised, unit: 'h/week' }
		if (organised > age + protocol.value('loading.hoursOverAge')) findings.push(finding('loading.hours-over-age', 'caution', `${organised} hours of organised sport a week is more than the age in years (${age}). This has been associated with more serious overuse injuries.`, [hours, { measure: 'Age', value: age, unit: 'years' }], protocol.basis('weekly hours by age', 'loading.hoursOverAge')))
		if (organised > protocol.value('loading.hoursMax')) findings.push(finding('loading.hours-high', 'caution', `${organised} hours of organised sport a week is above ${protocol.value('loading.hoursMax')}, which has been associated with more injuries.`, [hours], protocol.basis('weekly hours in all', 'loading.hoursMax')))
		const unfree = free === 0 && organised > 0
		if (unfree || (ratio !== undefined && ratio > protocol.value('loading.organisedToFreeMax'))) findings.push(finding('loading.organised-to-free', 'caution', `Organised sport is more than ${protocol.value('loading.organisedToFreeMax')} times free play${unfree ? ' (no free play at all)' : ''}. This has been associated with more overuse injuries.`, [hours, { measure: 'Free play', value: free ?? 0, unit: 'h/week' }], protocol.basis('organised sport to free play', 'loading.organisedToFreeMax')))
	}
	const force = mass === undefined ? undefined : { task: 'sidestep', lowN: mass * gravity * protocol.value('loading.sidestepLowBw'), highN: mass * gravity * protocol.value('loading.sidestepHighBw') }
	if (force) findings.push(finding('loading.force', 'note', `A sidestep puts roughly ${rounded(force.lowN, 0)} to ${rounded(force.highN, 0)} newtons on one foot: an order of size, not a measurement.`, [{ measure: 'Body mass', value: mass!, unit: 'kg' }], protocol.basis('force of a sidestep', 'loading.sidestepHighBw')))
	return { ...(force ? { peakForceN: force } : {}), ...(organised === undefined ? {} : { organisedHoursPerWeek: organised }), ...(ratio === undefined ? {} : { organisedToFreeRatio: ratio }), findings }
}
