/**
 * A weekly pattern with its exceptions, written out as sessions; and the sessions of a season in
 * order of time.
 */

import { addDays, dayNumber } from '../plain/days.ts'
import { present } from '../plain/present.ts'
import type { Pattern, PatternException, Season, Session } from '../visit/visit.ts'

/** A session that is known by its id. */
export type SeasonSession = Session & { id: string }

const weekdays = [
	'monday',
	'tuesday',
	'wednesday',
	'thursday',
	'friday',
	'saturday',
	'sunday',
] as const
/** 0 for a Monday to 6 for a Sunday. */
const weekdayIndex = (date: string): number => (((dayNumber(date) + 3) % 7) + 7) % 7
/** The Monday of the week a date lies in. */
export const mondayOf = (date: string): string => addDays(date, -weekdayIndex(date))
const isWithin = (exception: PatternException, date: string): boolean =>
	date >= exception.from && date <= (exception.to ?? exception.from)
/** A bye takes the match away and leaves the training; the other exceptions touch every kind. */
const touches = (exception: PatternException, date: string, pattern: Pattern): boolean =>
	isWithin(exception, date) &&
	(exception.pattern === undefined || exception.pattern === pattern.id) &&
	!(exception.status === 'bye' && pattern.kind === 'training')

function written(
	pattern: Pattern,
	date: string,
	exceptions: readonly PatternException[],
): SeasonSession {
	const { id, weekday: _weekday, from: _from, to: _to, ...session } = pattern
	let made: SeasonSession = { ...session, date, id: `${id}:${date}` }
	for (const exception of exceptions) {
		if (!touches(exception, date, pattern)) continue
		const { status, surface, ground, start, minutes } = exception
		made = { ...made, ...present({ status, surface, ground, start, minutes }) }
	}
	return made
}
/**
 * Every session of the weekly patterns between two dates, both included. Later exceptions override
 * earlier ones.
 * @internal
 */
export function expandPattern(
	patterns: readonly Pattern[],
	from: string,
	to: string,
	exceptions: readonly PatternException[] = [],
): SeasonSession[] {
	return patterns.flatMap((pattern) => {
		const first = pattern.from !== undefined && pattern.from > from ? pattern.from : from
		const last = pattern.to !== undefined && pattern.to < to ? pattern.to : to
		const daysAhead = (weekdays.indexOf(pattern.weekday) - weekdayIndex(first) + 7) % 7
		const made: SeasonSession[] = []
		for (let date = addDays(first, daysAhead); date <= last; date = addDays(date, 7))
			made.push(written(pattern, date, exceptions))
		return made
	})
}

/** What sorts sessions in order of time, and those at once always in the same order. */
const key = (session: Session): string =>
	`${session.date} ${session.start ?? '~'} ${session.id ?? ''} ${session.team ?? ''} ` +
	`${session.kind} ${session.surface} ${String(session.minutes).padStart(4, '0')} ` +
	`${session.ground ?? ''}`
const inOrder = (left: Session, right: Session): number => {
	const [first, second] = [key(left), key(right)]
	if (first === second) return 0
	return first < second ? -1 : 1
}
/**
 * Why a listed session does not take place, where an exception says so. Who is injured plays
 * nothing, whatever list it came from; a session that was only pinned still belongs to its weekly
 * row.
 */
function statusByException(session: Session, season: Season): Session['status'] {
	const within = (season.exceptions ?? []).filter((exception) => isWithin(exception, session.date))
	if (within.some(({ status, pattern }) => status === 'injured' && pattern === undefined))
		return 'injured'
	if (session.pinned === undefined) return undefined
	const row = season.pattern?.find((pattern) => session.id === `${pattern.id}:${session.date}`)
	if (!row) return undefined
	return within
		.filter((exception) => touches(exception, session.date, row))
		.findLast((exception) => exception.status !== undefined)?.status
}
function listedSessions(season: Season): Session[] {
	return (season.sessions ?? []).map((session) => {
		const status = session.status ?? statusByException(session, season)
		return status === undefined ? session : { ...session, status }
	})
}
/** Each with an id: its own, else made of its day, start, kind and team. */
function named(sessions: readonly Session[]): SeasonSession[] {
	const used = new Set<string>(sessions.flatMap((session) => session.id ?? []))
	return sessions.map((session) => {
		if (session.id !== undefined) return { ...session, id: session.id }
		const base = [session.date, session.start ?? '', session.kind, session.team ?? '']
			.filter(Boolean)
			.join('-')
			.replaceAll(' ', '-')
		let id = base
		for (let number = 2; used.has(id); number++) id = `${base}-${number}`
		used.add(id)
		return { ...session, id }
	})
}
/**
 * All sessions of a season in order of time, each with an id. A written session replaces the
 * pattern's of the same id.
 */
export function seasonSessions(season: Season): SeasonSession[] {
	const listed = listedSessions(season)
	const taken = new Set(listed.map((session) => session.id))
	const weekly = expandPattern(
		season.pattern ?? [],
		season.from,
		season.to,
		season.exceptions,
	).filter((session) => !taken.has(session.id))
	return named([...listed, ...weekly].sort(inOrder))
}
