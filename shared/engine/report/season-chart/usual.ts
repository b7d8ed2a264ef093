/** The usual week of some weeks: what comes back on a weekday, and the pair most often worn then. */
import { dayNumber } from '../../plain/days.ts'
import { weekdayOf } from '../iso-week.ts'
import type { WallSession, WallWeek } from './weeks.ts'

/** A session that comes back. */
export interface UsualSession {
	/** 0 for a Monday to 6 for a Sunday. */
	weekday: number
	/** One of the sessions that are as usual. */
	like: WallSession
	/** What is worn, as `wornKey` has it. */
	worn: string
}
/** Pairs in the order in which they are worn; empty where none is. @internal */
export const wornKey = ({ parts = [], pair = '' }: WallSession): string =>
	parts.length > 1 ? parts.map((part) => part.pair).join(' ') : pair
/** The weekday of a date, 0 for a Monday. */
export const weekdayOfDate = (date: string): number => weekdayOf(dayNumber(date))
/** Sessions with the same key come back at the same time of the week. */
const timeKey = ({ date, start = '', kind }: WallSession): string =>
	`${weekdayOfDate(date)} ${start} ${kind}`

/** The most frequent of some keys; the earliest of those that are as frequent. */
function mostFrequent<Thing>(things: readonly Thing[], keyOf: (thing: Thing) => string): Thing[] {
	return [...Map.groupBy(things, keyOf).values()].reduce(
		(most, some) => (some.length > most.length ? some : most),
		[],
	)
}
/**
 * What stands at least twice, and in more than half of the weeks, is usual: of two times that take
 * turns neither is (own choice).
 * @returns in the order of the week
 */
export function usualWeek(weeks: readonly WallWeek[]): UsualSession[] {
	const held = weeks.flatMap(({ sessions }) => sessions).filter(({ status }) => !status)
	const least = Math.max(2, Math.floor(weeks.length / 2) + 1)
	return [...Map.groupBy(held, timeKey)]
		.filter(([, sessions]) => sessions.length >= least)
		.toSorted(([a], [b]) => (a < b ? -1 : 1))
		.flatMap(([, sessions]) => {
			const [like] = mostFrequent(sessions, wornKey)
			return like ? [{ weekday: weekdayOfDate(like.date), like, worn: wornKey(like) }] : []
		})
}
/** Whether a session is at the usual time in the usual pair, to its full length. */
export const isUsual = (session: WallSession, usual: readonly UsualSession[]): boolean =>
	session.status === undefined &&
	session.fullMinutes === undefined &&
	usual.some(({ like, worn }) => timeKey(like) === timeKey(session) && worn === wornKey(session))
/** Whether a session is at a usual time. */
export const isAtUsualTime = (session: WallSession, usual: readonly UsualSession[]): boolean =>
	usual.some(({ like }) => timeKey(like) === timeKey(session))
