/** What was played stays: a changed weekly pattern never rewrites the sessions of a plan's past. */
import { present } from '../plain/present.ts'
import type { Season, Session } from '../visit/visit.ts'
import { seasonSessions } from './pattern.ts'
import type { Plan } from './plan-file.ts'

/**
 * The season with its past as the last plan has it. Sessions written down one by one, and days that
 * an exception took off, stand as they are written.
 * @param from ISO date: sessions before it are the past
 */
export function keepPast(
	season: Season,
	last: Pick<Plan, 'sessions' | 'from'>,
	from: string,
): Season {
	const listed = new Set((season.sessions ?? []).flatMap((session) => session.id ?? []))
	const now = new Map(seasonSessions(season).map((session) => [session.id, session]))
	const known = new Set(last.sessions.map((session) => session.id))
	const asPlayed = last.sessions
		.filter(({ id, date }) => date < from && !listed.has(id) && now.get(id)?.status === undefined)
		.map(
			({ id, date, start, minutes, kind, surface, ground, team, title }): Session =>
				present({ id, date, start, minutes, kind, surface, ground, team, title }),
		)
	// a pattern entered later does not reach back into days that were already planned
	const reachingBack = [...now.values()]
		.filter(
			({ id, date, status }) =>
				date < from &&
				date < last.from &&
				!known.has(id) &&
				!listed.has(id) &&
				status === undefined,
		)
		.map((session): Session => ({ ...session, status: 'cancelled' }))
	return asPlayed.length + reachingBack.length === 0
		? season
		: { ...season, sessions: [...(season.sessions ?? []), ...asPlayed, ...reachingBack] }
}
