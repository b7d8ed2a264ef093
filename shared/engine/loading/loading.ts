/**
 * The loading room: weekly hours of young players, and the order of size of the forces in a
 * sidestep.
 */
import type { LoadingResult } from '../findings/assessment.ts'
import type { Finding, Level } from '../findings/finding.ts'
import type { Basis, Because } from '../protocol/basis.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import { termWords } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { returnSteps } from './return.ts'
import { taskRows } from './tasks.ts'
import { loadWeeks } from './weeks.ts'

const gravity = 9.81
const finding = (
	id: string,
	level: Level,
	says: string,
	because: Because[],
	basis: Basis,
): Finding => ({ id, topic: 'loading', side: 'none', level, says, because, basis })

/**
 * Youth load rules (associations, not forecasts) and peak sidestep force in newtons where mass is
 * known.
 */
export function loading(visit: Visit, protocol: Protocol): LoadingResult {
	const findings: Finding[] = []
	const { organisedHoursPerWeek: organised, freePlayHoursPerWeek: free } = visit.play ?? {}
	const mass = visit.body?.massKg
	const age = ageYears(visit.player.birthDate, visit.visitDate)
	const ratio =
		organised !== undefined && free !== undefined && free > 0 ? organised / free : undefined
	if (age < protocol.value('loading.youthBelowYears') && organised !== undefined) {
		const hours = { measure: 'Organised sport', value: organised, unit: 'h/week' }
		if (organised > age + protocol.value('loading.hoursOverAge'))
			findings.push(
				finding(
					'loading.hours-over-age',
					'caution',
					`${organised} hours of organised sport a week is more than the age in years (${age}). ` +
						'This has been associated with more serious overuse injuries.',
					[hours, { measure: 'Age', value: age, unit: 'years' }],
					protocol.basis('weekly hours by age', 'loading.hoursOverAge'),
				),
			)
		const total = rounded(organised + (free ?? 0), 2)
		if (total > protocol.value('loading.hoursMax'))
			findings.push(
				finding(
					'loading.hours-high',
					'caution',
					`${total} hours of sport a week in ` +
						`all${free === undefined ? ' (free play not recorded)' : ''} is above ` +
						`${protocol.value('loading.hoursMax')}, which has been associated with more injuries.`,
					[
						hours,
						...(free === undefined ? [] : [{ measure: 'Free play', value: free, unit: 'h/week' }]),
					],
					protocol.basis('weekly hours in all', 'loading.hoursMax'),
				),
			)
		const unfree = free === 0 && organised > 0
		if (unfree || (ratio !== undefined && ratio > protocol.value('loading.organisedToFreeMax')))
			findings.push(
				finding(
					'loading.organised-to-free',
					'caution',
					`Organised sport is more than ${protocol.value('loading.organisedToFreeMax')} times ` +
						`free play${unfree ? ' (no free play at all)' : ''}. This has been associated with ` +
						'more overuse injuries.',
					[hours, { measure: 'Free play', value: free ?? 0, unit: 'h/week' }],
					protocol.basis('organised sport to free play', 'loading.organisedToFreeMax'),
				),
			)
	}
	const { monthsPerYearInOneSport: months, daysOffPerWeek: off } = visit.play ?? {}
	if (age < protocol.value('loading.youthBelowYears')) {
		if (months !== undefined && months > protocol.value('loading.monthsInOneSport'))
			findings.push(
				finding(
					'loading.one-sport',
					'caution',
					`${months} months a year in one sport is more than ` +
						`${protocol.value('loading.monthsInOneSport')}. Playing one sport most of the year ` +
						'has been associated with more injuries.',
					[{ measure: 'Months a year in one sport', value: months }],
					protocol.basis('months in one sport', 'loading.monthsInOneSport'),
				),
			)
		if (off !== undefined && off < protocol.value('loading.daysOffPerWeek'))
			findings.push(
				finding(
					'loading.no-day-off',
					'caution',
					'No day of the week is free of sport: plan at least one.',
					[{ measure: 'Days off a week', value: off }],
					protocol.basis('days off', 'loading.daysOffPerWeek'),
				),
			)
	}
	const weeks = visit.play?.weeks ? loadWeeks(visit.play.weeks) : undefined
	const latest = weeks?.at(-1)
	if (latest) {
		const because: Because[] = [
			{ measure: 'Session load of the week', value: latest.sum, unit: 'effort x min' },
			...(latest.monotony === undefined
				? []
				: [
						{ measure: 'Monotony (sample standard deviation)', value: rounded(latest.monotony, 3) },
					]),
			...(latest.changePercent === undefined
				? []
				: [
						{
							measure: 'Change from the week before',
							value: rounded(latest.changePercent, 1),
							unit: '%',
						},
					]),
		]
		const change =
			latest.changePercent === undefined
				? ''
				: ` That is ${rounded(Math.abs(latest.changePercent), 0)} % ` +
					`${latest.changePercent < 0 ? 'less' : 'more'} than the week before.`
		const plan =
			latest.changePercent !== undefined &&
			latest.changePercent > protocol.value('loading.weeklyRisePercent')
				? ` Planned rises are usually kept to ${protocol.value('loading.weeklyRisePercent')} % ` +
					`a week and at most ${protocol.value('loading.weeklyRiseCapPercent')} %.`
				: ''
		findings.push(
			finding(
				'loading.week',
				'note',
				`Week from ${latest.from}: session load ${latest.sum}.${change}${plan} The studies ` +
					'disagree on whether such changes go with injury, so no risk is shown.',
				because,
				protocol.basis(
					'session load by the week (Foster 2001); Impellizzeri 2020 against risk from load ratios',
					'loading.weeklyRisePercent',
				),
			),
		)
	}
	const bones = (visit.conditions ?? []).filter(
		(condition) =>
			condition.condition.endsWith('stress-fracture') && condition.status === 'recovering',
	)
	const steps = bones.length > 0 ? returnSteps(protocol) : undefined
	if (steps)
		findings.push(
			finding(
				'loading.return-steps',
				'advise',
				'Coming back after a bone stress injury: start near ' +
					`${protocol.value('loading.returnStartPercent')} % of the usual weekly load and add at ` +
					`most ${protocol.value('loading.weeklyRisePercent')} % a week, with an easier week ` +
					`every ${protocol.value('loading.easierWeekEvery')} weeks; about ${steps.length} weeks ` +
					'in all. Only once the treating doctor allows impact, free of bone pain; any focal bone ' +
					'pain: back one step and have it seen.',
				bones.map((bone) => ({
					measure: termWords(bone.condition),
					value: `${bone.status}, ${bone.side}`,
				})),
				protocol.basis('return by weekly steps', 'loading.returnStartPercent'),
			),
		)
	const peakForces =
		mass === undefined
			? undefined
			: taskRows.map((taskRow) => ({
					task: taskRow.task,
					lowN: mass * gravity * protocol.value(taskRow.low),
					highN: mass * gravity * protocol.value(taskRow.high),
					basis: protocol.basis(`force: ${taskRow.task}`, taskRow.high),
				}))
	const force =
		mass === undefined
			? undefined
			: {
					task: 'sidestep',
					lowN: mass * gravity * protocol.value('loading.sidestepLowBw'),
					highN: mass * gravity * protocol.value('loading.sidestepHighBw'),
				}
	if (force)
		findings.push(
			finding(
				'loading.force',
				'note',
				`A sidestep puts roughly ${rounded(force.lowN, 0)} to ${rounded(force.highN, 0)} ` +
					'newtons on one foot: an order of size, not a measurement.',
				[{ measure: 'Body mass', value: mass!, unit: 'kg' }],
				protocol.basis('force of a sidestep', 'loading.sidestepHighBw'),
			),
		)
	return {
		...(force ? { peakForceN: force } : {}),
		...(peakForces ? { peakForces } : {}),
		...(weeks ? { weeks } : {}),
		...(steps ? { returnSteps: steps } : {}),
		...(organised === undefined ? {} : { organisedHoursPerWeek: organised }),
		...(ratio === undefined ? {} : { organisedToFreeRatio: ratio }),
		findings,
	}
}
