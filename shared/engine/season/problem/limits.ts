/**
 * What the findings of a visit ask of the rotation: weekly limits, and conditions that stop it.
 * Common practice, no source, unless a row says otherwise.
 */

import type { Finding } from '../../findings/finding.ts'
import { dayNumber } from '../../plain/days.ts'
import type { Basis } from '../../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import { type Condition, type Sole, termWords } from '../../visit/terms.ts'
import type { Pair, Visit } from '../../visit/visit.ts'
import { mondayOf } from '../pattern.ts'
import { returnLimit } from './lay-off.ts'
import type { Cap, Slot } from './problem.ts'

type Status = 'current' | 'recovering' | 'past'
const active: readonly Status[] = ['current', 'recovering']
const heel: readonly Condition[] = [
	'calcaneal-apophysitis',
	'achilles-insertional',
	'achilles-midportion',
	'haglund-deformity',
]
const bone: readonly Condition[] = [
	'second-metatarsal-stress-fracture',
	'fifth-metatarsal-stress-fracture',
	'navicular-stress-fracture',
]
const studded: readonly Sole[] = ['soft-ground', 'firm-ground', 'artificial-ground']

function suffers(visit: Visit, conditions: readonly Condition[], statuses: readonly Status[]) {
	return (visit.conditions ?? []).find(
		(condition) => conditions.includes(condition.condition) && statuses.includes(condition.status),
	)
}
interface Stop {
	id: string
	when: readonly Condition[]
	statuses: readonly Status[]
	says: (name: string) => string
	basis: Basis
}
const stops: Stop[] = [
	{
		id: 'season.stop-bone-stress',
		when: bone,
		statuses: ['current'],
		says: (name) =>
			`No session is planned while a ${name} is current: stop impact first. Set it to ` +
			'recovering when play may begin again.',
		basis: {
			rule: 'current bone stress injury',
			source: 'high-risk bone stress: stop impact (AAFP 2003;67:85; Ekstrand & van Dijk 2013)',
			strength: 'guideline',
		},
	},
	{
		id: 'season.stop-sensation',
		when: ['neuropathy', 'previous-foot-ulcer'],
		statuses: ['current', 'recovering', 'past'],
		says: (name) =>
			`No rotation is planned with ${name}: each boot needs a review of its own before it is worn.`,
		basis: {
			rule: 'neuropathy or previous ulcer blocks the rotation',
			source: 'NICE NG19 (high risk)',
			strength: 'guideline',
		},
	},
]
/** The condition that stops all planning, if one does. */
export function stopOf(visit: Visit): Finding | undefined {
	for (const stop of stops) {
		const found = suffers(visit, stop.when, stop.statuses)
		if (found)
			return {
				id: stop.id,
				topic: 'season',
				side: found.side,
				level: 'stop',
				says: stop.says(termWords(found.condition)),
				because: [
					{ measure: 'condition', value: termWords(found.condition) },
					{ measure: 'status', value: found.status },
				],
				basis: stop.basis,
			}
	}
	return undefined
}

/** A limit of a group of pairs, with the finding that explains it. */
interface Weekly {
	id: string
	/** places of the pairs */
	pairs: number[]
	says: string
	key?: ThresholdKey
	/** by the number of the week since the visit */
	minutes: (week: number) => number
	finding?: Omit<Finding, 'basis'>
}
/** From heel to forefoot with what lies inside, in mm; undefined where it was not measured. */
const offsetInside = (pair: Pair): number | undefined =>
	pair.heelToForefootOffsetMm === undefined
		? undefined
		: pair.heelToForefootOffsetMm + (pair.heelLiftMm ?? 0)

function lowOffset(visit: Visit, pairs: readonly Pair[], protocol: Protocol): Weekly[] {
	const found = suffers(visit, heel, active)
	const lowest = protocol.value('season.lowOffsetMm')
	const low = pairs.flatMap((pair, place) => {
		const offsetMm = offsetInside(pair)
		return offsetMm !== undefined && offsetMm < lowest ? [{ pair, place, offsetMm }] : []
	})
	if (!found || low.length === 0) return []
	const most = protocol.value('season.lowOffsetMinutes')
	return [
		{
			id: 'season.cap-low-offset',
			pairs: low.map(({ place }) => place),
			says: `at most ${most} minutes a week in low-heeled boots`,
			key: 'season.lowOffsetMinutes',
			minutes: () => most,
			finding: {
				id: 'season.cap-low-offset',
				topic: 'season',
				side: found.side,
				level: 'advise',
				says:
					`Boots with less than ${lowest} mm from heel to ` +
					`forefoot, inserts included, are limited to ${most} minutes a week while ` +
					`${termWords(found.condition)} lasts. A heel raise inside them lifts the limit.`,
				because: [
					{ measure: 'condition', value: termWords(found.condition) },
					...low.map(({ pair, offsetMm }) => ({
						measure: `offset of ${pair.name ?? pair.id}`,
						value: offsetMm,
						unit: 'mm',
					})),
				],
			},
		},
	]
}
function afterBoneStress(
	visit: Visit,
	pairs: readonly Pair[],
	usualWeek: number,
	protocol: Protocol,
): Weekly[] {
	const found = suffers(visit, bone, ['recovering'])
	const studs = pairs.flatMap((pair, place) =>
		pair.sole !== undefined && studded.includes(pair.sole) ? [place] : [],
	)
	if (!found || studs.length === 0) return []
	const limit = returnLimit(usualWeek, protocol)
	// a limit by the week of return, not by the minutes really worn: with whole sessions the latter
	// never lets a second session in
	const minutes = (week: number) => Math.floor(limit(week))
	return [
		{
			id: 'season.cap-studs',
			pairs: studs,
			says: 'studs come back step by step after bone stress',
			key: 'season.returnShare',
			minutes,
			finding: {
				id: 'season.cap-studs',
				topic: 'season',
				side: found.side,
				level: 'caution',
				says:
					`Studded boots come back step by step after ${termWords(found.condition)}: at ` +
					`most ${minutes(0)} minutes in the first week, ${minutes(1)} in the second, ` +
					`${minutes(3)} in the fourth.`,
				because: [{ measure: 'usual week', value: rounded(usualWeek, 0), unit: 'min' }],
			},
		},
	]
}
/** Limits that the clinician entered for a pair. */
const entered = (pairs: readonly Pair[]): Weekly[] =>
	pairs.flatMap(({ id, weeklyMinutesMax: most }, place) =>
		most === undefined
			? []
			: [
					{
						id: `season.cap-${id}`,
						pairs: [place],
						says: `at most ${most} minutes a week in this pair`,
						minutes: () => most,
					},
				],
	)
/** Places of the sessions ahead by the Monday of their week. */
function weeksAhead(slots: readonly Slot[]): Map<string, number[]> {
	const weeks = new Map<string, number[]>()
	for (const [place, slot] of slots.entries()) {
		const monday = mondayOf(slot.date)
		if (!slot.past) weeks.set(monday, [...(weeks.get(monday) ?? []), place])
	}
	return weeks
}
/** Weekly limits (Monday to Sunday) of groups of pairs, with the findings that explain them. */
export function weeklyLimits(
	visit: Visit,
	pairs: readonly Pair[],
	slots: readonly Slot[],
	usualWeek: number,
	protocol: Protocol,
): { caps: Cap[]; findings: Finding[] } {
	// counted from the visit that found it, so that planning again does not begin the return anew
	const weekOf = (monday: string): number =>
		Math.max(0, Math.round((dayNumber(monday) - dayNumber(mondayOf(visit.visitDate))) / 7))
	const weeks = weeksAhead(slots)
	const rules = [
		...lowOffset(visit, pairs, protocol),
		...afterBoneStress(visit, pairs, usualWeek, protocol),
		...entered(pairs),
	]
	return {
		caps: rules.map(({ id, says, pairs: members, minutes }) => ({
			id,
			says,
			pairs: members,
			weeks: [...weeks].map(([monday, places]) => ({
				monday,
				slots: places,
				minutes: minutes(weekOf(monday)),
			})),
		})),
		findings: rules.flatMap((rule) =>
			rule.finding && rule.key
				? [{ ...rule.finding, basis: protocol.basis(rule.id, rule.key) }]
				: [],
		),
	}
}
