/** What was played stays: a changed weekly pattern never rewrites the sessions of a plan's past. */
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
	const now = new Map(seasonSessions(season).map((one) => [one.id, one]))
	const known = new Set(last.sessions.map((session) => session.id))
	const asPlayed = last.sessions
		.filter(
			(session) =>
				session.date < from && !listed.has(session.id) && now.get(session.id)?.status === undefined,
		)
		.map(
			(session): Session => ({
				id: session.id,
				date: session.date,
				start: session.start,
				minutes: session.minutes,
				kind: session.kind,
				surface: session.surface,
				ground: session.ground,
				...(session.team === undefined ? {} : { team: session.team }),
				...(session.title === undefined ? {} : { title: session.title }),
			}),
		)
	// a pattern entered later does not reach back into days that were already planned
	const reachingBack = [...now.values()]
		.filter(
			(one) =>
				one.date < from &&
				one.date < last.from &&
				!known.has(one.id) &&
				!listed.has(one.id) &&
				one.status === undefined,
		)
		.map((one): Session => ({ ...one, status: 'cancelled' }))
	return asPlayed.length + reachingBack.length === 0
		? season
		: { ...season, sessions: [...(season.sessions ?? []), ...asPlayed, ...reachingBack] }
}
