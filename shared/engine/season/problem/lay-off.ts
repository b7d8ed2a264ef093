/**
 * Back after a long lay-off: half the usual weekly load at first, then step by step. Sessions are
 * shortened, not left out. Advice, no release to play.
 */
import { type Finding, findingOf, reading } from '../../findings/finding.ts'
import { addDays, dayNumber } from '../../plain/days.ts'
import type { Protocol } from '../../protocol/protocol.ts'
import { rounded } from '../../visit/sides.ts'
import type { Session } from '../../visit/visit.ts'
import { state } from '../../words/statement.ts'
import { mondayOf } from '../pattern.ts'
import { type Cap, momentOf, type Slot, totalMinutes } from './problem.ts'

/**
 * Minutes a week after a return, by the number of the week from 0: a share of the usual week, then
 * a little more each week.
 */
export function returnLimit(usualWeek: number, protocol: Protocol): (week: number) => number {
	const [share, rise, plus] = [
		protocol.value('season.returnShare'),
		1 + protocol.value('season.returnRise'),
		protocol.value('season.returnPlusMinutes'),
	]
	return (week) => {
		let limit = share * usualWeek
		for (let passed = 0; passed < week; passed++) limit = limit * rise + plus
		return limit
	}
}
/** What a session lasts for the others, where it is shortened for this player. */
const fullMinutesOf = (slot: Slot): number => slot.fullMinutes ?? slot.minutes
/** Sessions by the Monday of their week. */
function byWeek(slots: readonly Slot[]): Map<string, Slot[]> {
	const weeks = new Map<string, Slot[]>()
	for (const slot of slots) {
		const monday = mondayOf(slot.date)
		weeks.set(monday, [...(weeks.get(monday) ?? []), slot])
	}
	return weeks
}
/** Minutes of the middle week of a season: half of the weeks with sessions have less. */
export function usualWeekMinutes(slots: readonly Slot[]): number {
	const totals = [...byWeek(slots).values()]
		.map((list) => list.reduce((sum, slot) => sum + fullMinutesOf(slot), 0))
		.sort((left, right) => left - right)
	return totals[Math.floor(totals.length / 2)] ?? 0
}
interface LayOff {
	from: string
	days: number
	back: string
}
/** Stretches of sessions missed injured, from the first missed to the first played again. */
function layOffs(
	sessions: readonly Pick<Session, 'date' | 'status'>[],
	leastDays: number,
): LayOff[] {
	const found: LayOff[] = []
	let from: string | undefined
	for (const { date, status } of sessions) {
		if (status === 'injured') from ??= date
		else if (status === undefined) {
			if (from !== undefined && dayNumber(date) - dayNumber(from) >= leastDays)
				found.push({ from, days: dayNumber(date) - dayNumber(from), back: date })
			from = undefined
		}
	}
	return found
}
/** Each week of a return with its limit, until the limit reaches the usual week. */
function returnWeeks(
	back: string,
	usualWeek: number,
	protocol: Protocol,
): { number: number; monday: string; most: number }[] {
	const limit = returnLimit(usualWeek, protocol)
	const weeks: { number: number; monday: string; most: number }[] = []
	for (let week = 0; limit(week) < usualWeek; week++)
		weeks.push({
			number: week + 1,
			monday: addDays(mondayOf(back), 7 * week),
			most: Math.floor(limit(week)),
		})
	return weeks
}
/** Shortens sessions in proportion, in round minutes, so that their week keeps to its limit. */
function shorten(
	open: readonly Slot[],
	{ most, total, roundMinutes }: { most: number; total: number; roundMinutes: number },
	eased: { easedWeek: number; easedDays: number },
): void {
	for (const slot of open) {
		const part = Math.floor((slot.minutes * most) / total / roundMinutes) * roundMinutes
		const short = Math.max(1, part)
		if (short < slot.minutes)
			Object.assign(slot, { fullMinutes: slot.minutes, minutes: short, ...eased })
	}
}
function layOffFinding(
	{ from, days, back }: LayOff,
	limits: readonly number[],
	slots: readonly Slot[],
	usualWeek: number,
	protocol: Protocol,
): Finding[] {
	const shortened = slots.filter(
		(slot) => !slot.past && slot.fullMinutes !== undefined && slot.date >= back,
	)
	if (shortened.length === 0) return []
	const usualMinutes = rounded(usualWeek, 0)
	return [
		findingOf(state('season.lay-off', { days, from, weekMinutes: limits, usualMinutes }), {
			id: `season.lay-off-${back}`,
			side: 'none',
			level: 'caution',
			because: shortened.map((slot) => ({
				...reading('shortenedMinutes', slot.minutes, 'min'),
				at: momentOf(slot),
			})),
			basis: protocol.basis('load step by step after a long lay-off', 'season.returnShare'),
		}),
	]
}
/**
 * Shortens the open sessions of the weeks after each long lay-off in place, and gives the weekly
 * limits they now keep.
 */
export function easeIn(
	slots: Slot[],
	sessions: readonly Pick<Session, 'date' | 'status'>[],
	usualWeek: number,
	protocol: Protocol,
): { caps: (pairs: number[]) => Cap[]; findings: Finding[] } {
	const roundMinutes = protocol.value('season.roundMinutes')
	const weeks = byWeek(slots)
	const limited: Cap['weeks'] = []
	const findings: Finding[] = []
	for (const layOff of layOffs(sessions, protocol.value('season.layOffDays'))) {
		const { days, back } = layOff
		const returning = returnWeeks(back, usualWeek, protocol)
		for (const { number, monday, most } of returning) {
			const list = (weeks.get(monday) ?? []).filter((slot) => slot.date >= back)
			const open = list.filter((slot) => !slot.past)
			if (open.length === 0) continue
			const total = list.reduce((sum, slot) => sum + fullMinutesOf(slot), 0)
			if (total > most)
				shorten(open, { most, total, roundMinutes }, { easedWeek: number, easedDays: days })
			const played = totalMinutes(list.filter((slot) => slot.past))
			limited.push({
				monday,
				slots: open.map((slot) => slots.indexOf(slot)),
				minutes: Math.max(most - played, totalMinutes(open)),
			})
		}
		const limits = returning.map(({ most }) => most)
		findings.push(...layOffFinding(layOff, limits, slots, usualWeek, protocol))
	}
	return {
		caps: (pairs) =>
			limited.length === 0
				? []
				: [
						{
							id: 'season.cap-lay-off',
							limit: { limit: 'lay-off' },
							pairs,
							weeks: limited,
						},
					],
		findings,
	}
}
