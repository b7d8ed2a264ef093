/**
 * Weekly limits that the recorded conditions of a visit and its pairs ask of the rotation. Common practice, no source, unless a row says otherwise.
 */
import { conditionReading } from '../../conditions/query.ts'
import { holdsOn } from '../../facts/held.ts'
import { type Finding, findingOf, reading } from '../../findings/finding.ts'
import { dayNumber } from '../../plain/days.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Sole } from '../../visit/terms.ts'
import type { Pair, Visit } from '../../visit/visit.ts'
import type { WeeklyLimit } from '../../words/en/season/wearing.ts'
import { state } from '../../words/statement.ts'
import { mondayOf } from '../pattern.ts'
import { namesOf, sideOf, thatAsk } from './condition-asks.ts'
import { returnLimit } from './lay-off.ts'
import { heelAboveForefootMm, type SeasonPlan } from './prescribed.ts'
import type { Cap, Slot } from './problem.ts'

const studded: readonly Sole[] = ['soft-ground', 'firm-ground', 'artificial-ground']
/** A limit of a group of pairs, with the finding that explains it. */
interface Weekly {
	id: string
	/** places of the pairs */
	pairs: number[]
	limit: WeeklyLimit
	/** by the number of the week since the visit */
	minutes: (week: number) => number
	finding?: Finding
}
/**
 * From heel to forefoot with what the plan puts inside, in mm; without a plan, with what lies inside;
 * undefined where it was not measured.
 */
function offsetInside(pair: Pair, plan: SeasonPlan | undefined): number | undefined {
	const planned = plan && heelAboveForefootMm(pair, plan)
	if (planned !== undefined || pair.heelToForefootOffsetMm === undefined) return planned
	return pair.heelToForefootOffsetMm + (pair.heelLiftMm ?? 0)
}
function lowOffset(
	visit: Visit,
	pairs: readonly Pair[],
	plan: SeasonPlan | undefined,
	protocol: Protocol,
): Weekly[] {
	const found = thatAsk(visit, ({ ask }) => ask === 'limit-low-offset')
	const leastMm = protocol.value('season.lowOffsetMm')
	const low = pairs.flatMap((pair, place) => {
		const offsetMm = offsetInside(pair, plan)
		return offsetMm !== undefined && offsetMm < leastMm ? [{ pair, place, offsetMm }] : []
	})
	if (found.length === 0 || low.length === 0) return []
	const mostMinutes = protocol.value('season.lowOffsetMinutes')
	const conditions = namesOf(found)
	return [
		{
			id: 'season.cap-low-offset',
			pairs: low.map(({ place }) => place),
			limit: { limit: 'low-offset', mostMinutes },
			minutes: () => mostMinutes,
			finding: findingOf(state('season.cap-low-offset', { conditions, leastMm, mostMinutes }), {
				id: 'season.cap-low-offset',
				side: sideOf(found),
				level: 'advise',
				because: [
					...found.map(conditionReading),
					...low.flatMap(({ pair, offsetMm }) => [
						{ measure: 'limitedPair', value: pair.name ?? pair.id },
						reading('pairOffsetMm', offsetMm, 'mm'),
					]),
				],
				basis: protocol.basis('weekly limit on low-heeled boots', 'season.lowOffsetMinutes'),
			}),
		},
	]
}
function afterBoneStress(
	visit: Visit,
	pairs: readonly Pair[],
	usualWeek: number,
	protocol: Protocol,
): Weekly[] {
	const found = thatAsk(visit, ({ ask }) => ask === 'limit-studs')
	const studs = pairs.flatMap((pair, place) =>
		pair.sole !== undefined && studded.includes(pair.sole) ? [place] : [],
	)
	if (found.length === 0 || studs.length === 0) return []
	const limit = returnLimit(usualWeek, protocol)
	// a limit by the week of return, not by the minutes really worn: with whole sessions the latter
	// never lets a second session in
	const minutes = (week: number) => Math.floor(limit(week))
	const [firstMinutes, secondMinutes, fourthMinutes] = [minutes(0), minutes(1), minutes(3)]
	const conditions = namesOf(found)
	return [
		{
			id: 'season.cap-studs',
			pairs: studs,
			limit: { limit: 'studs' },
			minutes,
			finding: findingOf(
				state('season.cap-studs', { conditions, firstMinutes, secondMinutes, fourthMinutes }),
				{
					id: 'season.cap-studs',
					side: sideOf(found),
					level: 'caution',
					because: [
						...found.map(conditionReading),
						reading('usualWeekMinutes', rounded(usualWeek, 0), 'min'),
					],
					basis: protocol.basis('studs step by step after bone stress', 'season.returnShare'),
				},
			),
		},
	]
}
/** Limits that the clinician entered for a pair. */
const entered = (pairs: readonly Pair[]): Weekly[] =>
	pairs.flatMap(({ id, weeklyMinutesMax: mostMinutes }, place): Weekly[] =>
		mostMinutes === undefined
			? []
			: [
					{
						id: `season.cap-${id}`,
						pairs: [place],
						limit: { limit: 'pair', mostMinutes },
						minutes: () => mostMinutes,
					},
				],
	)
/** The rule of the gate that holds impact while bone stress recovers. */
const recovering = 'bone-stress-recovering'
const waitsForReturn = ({ gate }: Pick<SeasonPlan, 'gate'>): boolean =>
	holdsOn(gate, 'impact').some(({ rule }) => rule === recovering)
/**
 * The day from which a return is counted, so that planning again does not begin it anew: that of the
 * outcome that cleared it, else of the visit that found it.
 */
function returnedOn({ outcomes = [], visitDate }: Visit): string {
	const cleared = outcomes.filter(
		({ rule, lifts, on }) => rule === recovering && lifts.includes('impact') && on <= visitDate,
	)
	return (
		cleared
			.map(({ on }) => on)
			.sort()
			.at(-1) ?? visitDate
	)
}
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
	plan?: SeasonPlan,
): { caps: Cap[]; findings: Finding[] } {
	const began = returnedOn(visit)
	// while matches and impact are held the return has not begun: each week is its first
	const weekOf = (monday: string): number =>
		plan && waitsForReturn(plan)
			? 0
			: Math.max(0, Math.round((dayNumber(monday) - dayNumber(mondayOf(began))) / 7))
	const weeks = weeksAhead(slots)
	const rules = [
		...lowOffset(visit, pairs, plan, protocol),
		...afterBoneStress(visit, pairs, usualWeek, protocol),
		...entered(pairs),
	]
	return {
		caps: rules.map(({ id, limit, pairs: members, minutes }) => ({
			id,
			limit,
			pairs: members,
			weeks: [...weeks].map(([monday, places]) => ({
				monday,
				slots: places,
				minutes: minutes(weekOf(monday)),
			})),
		})),
		findings: rules.flatMap(({ finding }) => finding ?? []),
	}
}
