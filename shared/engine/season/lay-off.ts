/**
 * Back after a long lay-off: half the usual weekly load at first, then step by step. Sessions are
 * shortened, not left out. Advice, no release to play.
 */
import type { Finding } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { addDays, dayNumber } from '../visit/age.ts'
import { rounded } from '../visit/sides.ts'
import type { Session } from '../visit/visit.ts'
import { fullDay, mondayOf } from './pattern.ts'
import type { Cap, Slot } from './problem.ts'

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
		for (let n = 0; n < week; n++) limit = limit * rise + plus
		return limit
	}
}
/** Sessions by the Monday of their week. */
function byWeek(slots: readonly Slot[]): Map<string, Slot[]> {
	const weeks = new Map<string, Slot[]>()
	for (const slot of slots)
		weeks.set(mondayOf(slot.date), [...(weeks.get(mondayOf(slot.date)) ?? []), slot])
	return weeks
}
/** Minutes of the middle week of a season: half of the weeks with sessions have less. */
export function usualWeekMinutes(slots: readonly Slot[]): number {
	const totals = [...byWeek(slots).values()]
		.map((list) => list.reduce((sum, slot) => sum + (slot.fullMinutes ?? slot.minutes), 0))
		.sort((a, b) => a - b)
	return totals[Math.floor(totals.length / 2)] ?? 0
}
export interface LayOff {
	from: string
	days: number
	back: string
}
/** Stretches of sessions missed injured, from the first missed to the first played again. */
export function layOffs(
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
	const limit = returnLimit(usualWeek, protocol)
	const roundMinutes = protocol.value('season.roundMinutes')
	const weeks = byWeek(slots)
	const limited: Cap['weeks'] = []
	const findings: Finding[] = []
	for (const { from, days, back } of layOffs(sessions, protocol.value('season.layOffDays'))) {
		const told: number[] = []
		for (let week = 0; limit(week) < usualWeek; week++) {
			const monday = addDays(mondayOf(back), 7 * week)
			const list = (weeks.get(monday) ?? []).filter((slot) => slot.date >= back)
			const total = list.reduce((sum, slot) => sum + (slot.fullMinutes ?? slot.minutes), 0)
			const most = Math.floor(limit(week))
			told.push(most)
			const open = list.filter((slot) => !slot.past)
			if (open.length === 0) continue
			if (total > most)
				for (const slot of open) {
					const short = Math.max(
						1,
						Math.floor((slot.minutes * most) / total / roundMinutes) * roundMinutes,
					)
					if (short < slot.minutes)
						Object.assign(slot, {
							fullMinutes: slot.minutes,
							minutes: short,
							easedWeek: week + 1,
							easedDays: days,
						})
				}
			const played = list.filter((slot) => slot.past).reduce((sum, slot) => sum + slot.minutes, 0)
			limited.push({
				monday,
				slots: open.map((slot) => slots.indexOf(slot)),
				minutes: Math.max(
					most - played,
					open.reduce((sum, slot) => sum + slot.minutes, 0),
				),
			})
		}
		const shortened = slots.filter(
			(slot) => !slot.past && slot.fullMinutes !== undefined && slot.date >= back,
		)
		if (shortened.length > 0)
			findings.push({
				id: `season.lay-off-${back}`,
				topic: 'season',
				side: 'none',
				level: 'caution',
				says:
					`After ${days} days off from ${fullDay(from)} the load comes back step by step: ` +
					`${told.map((minutes, week) => `at most ${minutes} minutes in week ${week + 1}`).join(', ')}, ` +
					`then the usual ${rounded(usualWeek, 0)}. The sessions are shortened for it. This ` +
					'is advice, no release to play.',
				because: shortened.map((slot) => ({
					measure: `${fullDay(slot.date)}, ${slot.start}`,
					value: `${slot.minutes} of ${slot.fullMinutes} minutes`,
				})),
				basis: protocol.basis('season.lay-off', 'season.returnShare'),
			})
	}
	return {
		caps: (pairs) =>
			limited.length === 0
				? []
				: [
						{
							id: 'season.cap-lay-off',
							says: 'less load after a long lay-off',
							pairs,
							weeks: limited,
						},
					],
		findings,
	}
}
