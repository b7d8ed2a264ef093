/** The season as weeks down and days across, and the walk through it by keys. Pure. */
import { addDays } from '../../../shared/engine/plain/days.ts'
import { mondayOf } from '../../../shared/engine/season/pattern.ts'
import type { Season } from '../../../shared/engine/visit/visit.ts'
import type { Line } from './edits.ts'

export interface DayOfWeek {
	date: string
	/** Whether it lies within the season. */
	inside: boolean
	lines: readonly Line[]
}
export interface Week {
	monday: string
	/** Monday first. */
	days: readonly DayOfWeek[]
}
/** Every week of a season, those without a session too. */
export function weeksOf({ from, to }: Pick<Season, 'from' | 'to'>, lines: readonly Line[]): Week[] {
	const byDay = Map.groupBy(lines, ({ session }) => session.date)
	const weeks: Week[] = []
	for (let monday = mondayOf(from); monday <= to; monday = addDays(monday, 7))
		weeks.push({
			monday,
			days: [0, 1, 2, 3, 4, 5, 6].map((weekday) => {
				const date = addDays(monday, weekday)
				return { date, inside: date >= from && date <= to, lines: byDay.get(date) ?? [] }
			}),
		})
	return weeks
}
/** A place in the grid: a day, and which of its sessions. */
export interface Place {
	week: number
	day: number
	/** 0 on a day without a session */
	at: number
}
export const dayAt = (weeks: readonly Week[], { week, day }: Place): DayOfWeek | undefined =>
	weeks[week]?.days[day]
export const lineAt = (weeks: readonly Week[], place: Place): Line | undefined =>
	dayAt(weeks, place)?.lines[place.at]
/** Where the first session that is not past stands; the first day where there is none. */
export function firstAhead(weeks: readonly Week[]): Place {
	for (const [week, { days }] of weeks.entries())
		for (const [day, { lines }] of days.entries()) {
			const at = lines.findIndex((line) => !line.past)
			if (at >= 0) return { week, day, at }
		}
	return { week: 0, day: 0, at: 0 }
}
/** Weeks that Page Up and Page Down pass over. */
const aPage = 4
const within = (value: number, last: number): number => Math.max(0, Math.min(last, value))

/** One session down or up within the day, else into the week after or before. */
function vertical(weeks: readonly Week[], place: Place, by: 1 | -1): Place {
	const here = dayAt(weeks, place)?.lines.length ?? 0
	const at = place.at + by
	if (at >= 0 && at < here) return { ...place, at }
	const week = place.week + by
	const next = weeks[week]?.days[place.day]
	if (!next) return place
	return { ...place, week, at: by === 1 ? 0 : Math.max(0, next.lines.length - 1) }
}
/** Weeks and days that a key leads on. */
const steps = new Map<string, readonly [weeks: number, days: number]>([
	['ArrowRight', [0, 1]],
	['ArrowLeft', [0, -1]],
	['PageDown', [aPage, 0]],
	['PageUp', [-aPage, 0]],
	['Home', [0, -6]],
	['End', [0, 6]],
])
/** Where a key leads from a place; undefined for other keys. The walk ends at the edges. */
export function moved(weeks: readonly Week[], place: Place, key: string): Place | undefined {
	if (key === 'ArrowDown') return vertical(weeks, place, 1)
	if (key === 'ArrowUp') return vertical(weeks, place, -1)
	const step = steps.get(key)
	if (!step) return undefined
	const [down, right] = step
	return {
		week: within(place.week + down, weeks.length - 1),
		day: within(place.day + right, 6),
		at: 0,
	}
}
