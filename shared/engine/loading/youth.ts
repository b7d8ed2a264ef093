/** Load rules for young players: associations found in groups, not forecasts for one player. */
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { loadingFinding } from './says.ts'

const hoursOf = (measure: string, value: number) => ({ measure, value, unit: 'h/week' })

/** Hours of organised sport to hours of free play; undefined where either is missing or nought. */
export function organisedToFreeRatio(visit: Visit): number | undefined {
	const { organisedHoursPerWeek: organised, freePlayHoursPerWeek: free } = visit.play ?? {}
	return organised !== undefined && free !== undefined && free > 0 ? organised / free : undefined
}
function hoursOverAgeFindings(organised: number, age: number, protocol: Protocol): Finding[] {
	const overAge = protocol.value('loading.hoursOverAge')
	if (organised <= age + overAge) return []
	return [
		loadingFinding(
			state('loading.hours-over-age', { hours: organised, ageYears: age, overAge }),
			'caution',
			[
				hoursOf('organisedHoursPerWeek', organised),
				{ measure: 'ageYears', value: age, unit: 'years' },
			],
			protocol.basis('weekly hours by age', 'loading.hoursOverAge'),
		),
	]
}
function hoursHighFindings(
	organised: number,
	free: number | undefined,
	protocol: Protocol,
): Finding[] {
	const hours = rounded(organised + (free ?? 0), 2)
	const mostHours = protocol.value('loading.hoursMax')
	if (hours <= mostHours) return []
	const freePlayKnown = free !== undefined
	return [
		loadingFinding(
			state('loading.hours-high', { hours, mostHours, freePlayKnown }),
			'caution',
			[
				hoursOf('organisedHoursPerWeek', organised),
				...(free === undefined ? [] : [hoursOf('freePlayHoursPerWeek', free)]),
			],
			protocol.basis('weekly hours in all', 'loading.hoursMax'),
		),
	]
}
function freePlayFindings(visit: Visit, organised: number, protocol: Protocol): Finding[] {
	const free = visit.play?.freePlayHoursPerWeek
	const ratio = organisedToFreeRatio(visit)
	const mostTimes = protocol.value('loading.organisedToFreeMax')
	const noFreePlay = free === 0 && organised > 0
	if (!noFreePlay && (ratio === undefined || ratio <= mostTimes)) return []
	return [
		loadingFinding(
			state('loading.organised-to-free', { mostTimes, noFreePlay }),
			'caution',
			[hoursOf('organisedHoursPerWeek', organised), hoursOf('freePlayHoursPerWeek', free ?? 0)],
			protocol.basis('organised sport to free play', 'loading.organisedToFreeMax'),
		),
	]
}
function monthsFindings(visit: Visit, protocol: Protocol): Finding[] {
	const months = visit.play?.monthsPerYearInOneSport
	const mostMonths = protocol.value('loading.monthsInOneSport')
	if (months === undefined || months <= mostMonths) return []
	return [
		loadingFinding(
			state('loading.one-sport', { months, mostMonths }),
			'caution',
			[{ measure: 'monthsPerYearInOneSport', value: months }],
			protocol.basis('months in one sport', 'loading.monthsInOneSport'),
		),
	]
}
function daysOffFindings(visit: Visit, protocol: Protocol): Finding[] {
	const daysOff = visit.play?.daysOffPerWeek
	const leastDays = protocol.value('loading.daysOffPerWeek')
	if (daysOff === undefined || daysOff >= leastDays) return []
	return [
		loadingFinding(
			state('loading.no-day-off', { daysOff, leastDays }),
			'caution',
			[{ measure: 'daysOffPerWeek', value: daysOff }],
			protocol.basis('days off', 'loading.daysOffPerWeek'),
		),
	]
}
/** What is said of a young player's week; nothing for adults. */
export function youthFindings(visit: Visit, protocol: Protocol): Finding[] {
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	if (age >= protocol.value('loading.youthBelowYears')) return []
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
