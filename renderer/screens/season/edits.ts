/** Changes of a season, each a whole new season; and what the screen lists. Pure. */

import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { keepPast } from '../../../shared/engine/season/past.ts'
import { seasonSessions } from '../../../shared/engine/season/pattern.ts'
import type { Plan, PlanSession } from '../../../shared/engine/season/plan-file.ts'
import { problemsOf } from '../../../shared/engine/visit/problems.ts'
import {
	exceptionSchema,
	type Pattern,
	type PatternException,
	patternSchema,
	type Season,
	type Session,
	sessionSchema,
} from '../../../shared/engine/visit/visit.ts'

/** Whether a text is a whole ISO date; a field holds other text while it is typed. */
export const isDate = (text: string): boolean => /^\d{4}-\d\d-\d\d$/.test(text)
/** What is wrong with the day of a session, in words; empty where it lies within the season. */
export function outsideSeason({ from, to }: Season, date: string): string {
	if (date >= from && date <= to) return ''
	return (
		`Date: outside the season, given ${dayInWords(date)}, allowed: ` +
		`${dayInWords(from)} to ${dayInWords(to)}.`
	)
}

export type Listed = Session & { id: string }
export interface Line {
	session: Listed
	plan?: PlanSession
	past: boolean
}
type Read<T> = { ok: true; value: T } | { ok: false; says: string }
interface Schema<T> {
	safeParse(
		input: unknown,
	): { success: true; data: T } | { success: false; error: Parameters<typeof problemsOf>[0] }
}

/**
 * Empty fields are left out; a number typed as text becomes a number. The problems come back in
 * words by field.
 */
function read<T>(
	schema: Schema<T>,
	form: Record<string, string>,
	labels: Record<string, string>,
): Read<T> {
	const filled = Object.entries(form)
		.map(([key, text]) => [key, text.trim()] as const)
		.filter(([, typed]) => typed !== '')
	const value = Object.fromEntries(filled.map(([key, typed]) => [key, valueTyped(key, typed)]))
	const parsed = schema.safeParse(value)
	if (parsed.success) return { ok: true, value: parsed.data }
	const says = problemsOf(parsed.error, value)
		.map(({ path, message }) => `${labels[path] ?? path}: ${message}.`)
		.join(' ')
	return { ok: false, says }
}
const valueTyped = (key: string, typed: string): string | number =>
	key === 'minutes' && Number.isFinite(Number(typed)) ? Number(typed) : typed
const labels = {
	weekday: 'Weekday',
	start: 'Start',
	minutes: 'Minutes',
	kind: 'Kind',
	surface: 'Surface',
	ground: 'Ground',
	team: 'Team',
	code: 'Code',
	from: 'From',
	to: 'To',
	date: 'Date',
}
export const readPattern = (form: Record<string, string>): Read<Pattern> =>
	read(patternSchema as unknown as Schema<Pattern>, form, labels)
export const readException = (form: Record<string, string>): Read<PatternException> =>
	read(exceptionSchema as unknown as Schema<PatternException>, form, labels)
export const readSession = (form: Record<string, string>): Read<Session> =>
	read(sessionSchema as unknown as Schema<Session>, form, labels)

/** An id of its own that says what the row is: 'tue-training', then 'tue-training-2'. */
export function newPatternId(season: Season, weekday: string, kind: string): string {
	const taken = new Set((season.pattern ?? []).map((pattern) => pattern.id))
	return freeId(`${weekday.slice(0, 3)}-${kind}`, taken)
}
/** An id of its own for a further session: 'own-2027-05-01', then 'own-2027-05-01-2'. */
export function newSessionId(season: Season, date: string): string {
	const taken = new Set((season.sessions ?? []).map((session) => session.id))
	return freeId(`own-${date}`, taken)
}
function freeId(base: string, taken: ReadonlySet<string | undefined>): string {
	if (!taken.has(base)) return base
	let number = 2
	while (taken.has(`${base}-${number}`)) number++
	return `${base}-${number}`
}
/** In the order of the week. */
export const weekdays = [
	'monday',
	'tuesday',
	'wednesday',
	'thursday',
	'friday',
	'saturday',
	'sunday',
]
const order = ({ weekday, start }: Pattern) => `${weekdays.indexOf(weekday)} ${start ?? ''}`
export const withPattern = (season: Season, pattern: Pattern): Season => ({
	...season,
	pattern: [...(season.pattern ?? []).filter(({ id }) => id !== pattern.id), pattern].sort(
		(left, right) => (order(left) < order(right) ? -1 : 1),
	),
})
/** Several rows at once, each in place of the one of its id. */
export const withPatterns = (season: Season, rows: readonly Pattern[]): Season =>
	rows.reduce(withPattern, season)
/** Exceptions of the row go with it. */
export const withoutPattern = (season: Season, id: string): Season => ({
	...season,
	pattern: (season.pattern ?? []).filter((pattern) => pattern.id !== id),
	exceptions: (season.exceptions ?? []).filter((exception) => exception.pattern !== id),
})
export const withException = (season: Season, exception: PatternException): Season => ({
	...season,
	exceptions: [...(season.exceptions ?? []), exception].sort((left, right) =>
		left.from < right.from ? -1 : 1,
	),
})
export const withoutException = (season: Season, index: number): Season => ({
	...season,
	exceptions: (season.exceptions ?? []).filter((_, at) => at !== index),
})
/** Writes one session down by itself: it then stands before the weekly pattern's. */
export const withSession = (season: Season, session: Listed): Season => ({
	...season,
	sessions: [...(season.sessions ?? []).filter(({ id }) => id !== session.id), session],
})
/**
 * Takes the written session away again; the weekly pattern's, if there is one, stands in its place.
 */
export const withoutSession = (season: Season, id: string): Season => ({
	...season,
	sessions: (season.sessions ?? []).filter((session) => session.id !== id),
})
/**
 * Sessions without an id get one before they are changed, so that the change meets the right one.
 */
export function withIds(season: Season): Season {
	if ((season.sessions ?? []).every((session) => session.id !== undefined)) return season
	const listed = seasonSessions({ ...season, pattern: [] })
	return { ...season, sessions: listed }
}
export function pinned(season: Season, session: Listed, pair: string | undefined): Season {
	const { pinned: _, ...rest } = session
	return withSession(season, pair === undefined ? rest : { ...rest, pinned: pair })
}
/** Every session of the season, the past as it was planned, with what the last plan says of it. */
export function linesOf(season: Season, plan: Plan | undefined, today: string): Line[] {
	const whole = plan ? keepPast(season, plan, today) : season
	const says = new Map((plan?.sessions ?? []).map((session) => [session.id, session]))
	return seasonSessions(whole).map((session) => {
		const planned = says.get(session.id)
		return {
			session,
			past: session.date < today,
			...(planned && session.status === undefined ? { plan: planned } : {}),
		}
	})
}
