/**
 * A weekly pattern with its exceptions, written out as sessions; and the sessions of a season in
 * order of time.
 */
import { addDays, dayInWords, dayNumber } from '../visit/age.ts'
import type { Pattern, PatternException, Season, Session } from '../visit/visit.ts'

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
export const weekdayIndex = (date: string): number => (((dayNumber(date) + 3) % 7) + 7) % 7
/** The Monday of the week a date lies in. */
export const mondayOf = (date: string): string => addDays(date, -weekdayIndex(date))
export const weekdayName = (date: string): string => {
	const name = weekdays[weekdayIndex(date)]!
	return name[0]!.toUpperCase() + name.slice(1)
}
/** '2027-01-12' as 'Tuesday 12 January 2027', the way every sentence of the season names a day. */
export const fullDay = (date: string): string => `${weekdayName(date)} ${dayInWords(date)}`

/** A bye takes the match away and leaves the training; the other exceptions touch every kind. */
const touches = (exception: PatternException, date: string, pattern: Pattern): boolean =>
	date >= exception.from &&
	date <= (exception.to ?? exception.from) &&
	(exception.pattern === undefined || exception.pattern === pattern.id) &&
	!(exception.status === 'bye' && pattern.kind === 'training')

function written(pattern: Pattern, date: string, exceptions: readonly PatternException[]): Session {
	const { id, weekday: _weekday, from: _from, to: _to, ...session } = pattern
	const made: Session = { ...session, date, id: `${id}:${date}` }
	for (const { status, surface, ground, start, minutes } of exceptions.filter((exception) =>
		touches(exception, date, pattern),
	))
		Object.assign(
			made,
			Object.fromEntries(
				Object.entries({ status, surface, ground, start, minutes }).filter(
					([, value]) => value !== undefined,
				),
			),
		)
	return made
}
/**
 * Every session of the weekly patterns between two dates, both included. Later exceptions override
 * earlier ones.
 */
export function expandPattern(
	patterns: readonly Pattern[],
	from: string,
	to: string,
	exceptions: readonly PatternException[] = [],
): Session[] {
	return patterns.flatMap((pattern) => {
		const first = pattern.from !== undefined && pattern.from > from ? pattern.from : from
		const last = pattern.to !== undefined && pattern.to < to ? pattern.to : to
		const made: Session[] = []
		for (
			let date = addDays(first, (weekdays.indexOf(pattern.weekday) - weekdayIndex(first) + 7) % 7);
			date <= last;
			date = addDays(date, 7)
		)
			made.push(written(pattern, date, exceptions))
		return made
	})
}

const key = (session: Session): string =>
	`${session.date} ${session.start ?? '~'} ${session.id ?? ''} ${session.team ?? ''} ` +
	`${session.kind} ${session.surface} ${String(session.minutes).padStart(4, '0')} ` +
	`${session.ground ?? ''}`
/**
 * All sessions of a season in order of time, each with an id. A written session replaces the
 * pattern's of the same id.
 */
export function seasonSessions(season: Season): (Session & { id: string })[] {
	const exceptions = season.exceptions ?? []
	// who is injured plays nothing, whatever list it came from; a session that was only pinned still
	// belongs to its weekly row
	const off = (one: Session): Session['status'] => {
		const within = exceptions.filter(
			(exception) => one.date >= exception.from && one.date <= (exception.to ?? exception.from),
		)
		if (within.some((each) => each.status === 'injured' && each.pattern === undefined))
			return 'injured'
		const row =
			one.pinned === undefined
				? undefined
				: season.pattern?.find((each) => one.id === `${each.id}:${one.date}`)
		return (
			row &&
			within
				.filter((each) => touches(each, one.date, row))
				.findLast((each) => each.status !== undefined)?.status
		)
	}
	const listed = (season.sessions ?? []).map((session) => {
		const status = session.status ?? off(session)
		return status === undefined ? session : { ...session, status }
	})
	const taken = new Set(listed.map((one) => one.id))
	const all = [
		...listed,
		...expandPattern(season.pattern ?? [], season.from, season.to, season.exceptions).filter(
			(one) => !taken.has(one.id),
		),
	].sort((a, b) => (key(a) < key(b) ? -1 : key(a) > key(b) ? 1 : 0))
	const used = new Set<string>(all.flatMap((one) => one.id ?? []))
	return all.map((one) => {
		if (one.id !== undefined) return { ...one, id: one.id }
		const base = [one.date, one.start ?? '', one.kind, one.team ?? '']
			.filter(Boolean)
			.join('-')
			.replaceAll(' ', '-')
		let id = base
		for (let n = 2; used.has(id); n++) id = `${base}-${n}`
		used.add(id)
		return { ...one, id }
	})
}
