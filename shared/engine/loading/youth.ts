/** Load rules for young players: associations found in groups, not forecasts for one player. */
import { isAdult } from '../facts/age.ts'
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { finding } from './says.ts'

const hoursOf = (measure: string, value: number) => ({ measure, value, unit: 'h/week' })

/** Hours of organised sport to hours of free play; undefined where either is missing or nought. */
export function organisedToFreeRatio(visit: Visit): number | undefined {
	const { organisedHoursPerWeek: organised, freePlayHoursPerWeek: free } = visit.play ?? {}
	return organised !== undefined && free !== undefined && free > 0 ? organised / free : undefined
}
function hoursOverAgeFindings(organised: number, age: number, protocol: Protocol): Finding[] {
	if (organised <= age + protocol.value('loading.hoursOverAge')) return []
	return [
		finding(
			'hours-over-age',
			'caution',
			`${organised} hours of organised sport a week is more than the age in years (${age}). ` +
				'This has been associated with more serious overuse injuries.',
			[hoursOf('Organised sport', organised), { measure: 'Age', value: age, unit: 'years' }],
			protocol.basis('weekly hours by age', 'loading.hoursOverAge'),
		),
	]
}
function hoursHighFindings(
	organised: number,
	free: number | undefined,
	protocol: Protocol,
): Finding[] {
	const total = rounded(organised + (free ?? 0), 2)
	const most = protocol.value('loading.hoursMax')
	if (total <= most) return []
	const notRecorded = free === undefined ? ' (free play not recorded)' : ''
	return [
		finding(
			'hours-high',
			'caution',
			`${total} hours of sport a week in all${notRecorded} is above ${most}, which has been ` +
				'associated with more injuries.',
			[
				hoursOf('Organised sport', organised),
				...(free === undefined ? [] : [hoursOf('Free play', free)]),
			],
			protocol.basis('weekly hours in all', 'loading.hoursMax'),
		),
	]
}
function freePlayFindings(visit: Visit, organised: number, protocol: Protocol): Finding[] {
	const free = visit.play?.freePlayHoursPerWeek
	const ratio = organisedToFreeRatio(visit)
	const most = protocol.value('loading.organisedToFreeMax')
	const noneAtAll = free === 0 && organised > 0
	if (!noneAtAll && (ratio === undefined || ratio <= most)) return []
	return [
		finding(
			'organised-to-free',
			'caution',
			`Organised sport is more than ${most} times free ` +
				`play${noneAtAll ? ' (no free play at all)' : ''}. This has been associated with more ` +
				'overuse injuries.',
			[hoursOf('Organised sport', organised), hoursOf('Free play', free ?? 0)],
			protocol.basis('organised sport to free play', 'loading.organisedToFreeMax'),
		),
	]
}
function monthsFindings(visit: Visit, protocol: Protocol): Finding[] {
	const months = visit.play?.monthsPerYearInOneSport
	const most = protocol.value('loading.monthsInOneSport')
	if (months === undefined || months <= most) return []
	return [
		finding(
			'one-sport',
			'caution',
			`${months} months a year in one sport is more than ${most}. Playing one sport most of the ` +
				'year has been associated with more injuries.',
			[{ measure: 'Months a year in one sport', value: months }],
			protocol.basis('months in one sport', 'loading.monthsInOneSport'),
		),
	]
}
function daysOffFindings(visit: Visit, protocol: Protocol): Finding[] {
	const daysOff = visit.play?.daysOffPerWeek
	if (daysOff === undefined || daysOff >= protocol.value('loading.daysOffPerWeek')) return []
	return [
		finding(
			'no-day-off',
			'caution',
			'No day of the week is free of sport: plan at least one.',
			[{ measure: 'Days off a week', value: daysOff }],
			protocol.basis('days off', 'loading.daysOffPerWeek'),
		),
	]
}
/** What is said of a young player's week; nothing for adults. */
export function youthFindings(visit: Visit, protocol: Protocol): Finding[] {
	if (isAdult(visit, protocol)) return []
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const { organisedHoursPerWeek: organised, freePlayHoursPerWeek: free } = visit.play ?? {}
	const byHours =
		organised === undefined
			? []
			: [
					...hoursOverAgeFindings(organised, age, protocol),
					...hoursHighFindings(organised, free, protocol),
					...freePlayFindings(visit, organised, protocol),
				]
	return [...byHours, ...monthsFindings(visit, protocol), ...daysOffFindings(visit, protocol)]
}
