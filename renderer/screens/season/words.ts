/** Weekly sessions, exceptions and single sessions in words. Pure. */

import { dayInWords, weekdayName } from '../../../shared/engine/plain/days.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import type {
	Pattern,
	PatternException,
	Season,
	Session,
} from '../../../shared/engine/visit/visit.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import type { Option } from './options.ts'

/** 'Tuesday 18:00, 75 min training, natural firm, wet'. */
export function patternWords(pattern: Pattern): string {
	const { weekday, start, minutes, kind, surface, ground, team, code, from, to } = pattern
	const day = capital(weekday)
	return [
		start ? `${day} ${start}` : day,
		`${minutes} min ${kind}`,
		termWords(surface),
		ground === 'dry' ? undefined : ground,
		team,
		code && termWords(code),
		from && `from ${dayInWords(from)}`,
		to && `until ${dayInWords(to)}`,
	]
		.filter(Boolean)
		.join(', ')
}

/** What departs from the weekly pattern, as it is chosen. */
export const exceptionSorts: Option[] = [
	['bye', 'Bye (match off)'],
	['cancelled', 'Rained off'],
	['injured', 'Injured, no play'],
	['wet', 'Ground wet'],
	['damp', 'Ground damp'],
	['start', 'Other start'],
	['surface', 'Other surface'],
]
const sortWords = new Map<string, string>(exceptionSorts)
/** 'Rained off: 1 February 2027 to 5 February 2027 (Tuesday training)'. */
export function exceptionWords(exception: PatternException, season: Season): string {
	const { pattern, status, ground, surface, start, minutes, from, to } = exception
	const what = [
		status && sortWords.get(status),
		ground && `ground ${ground}`,
		surface && `on ${termWords(surface)}`,
		start && `at ${start}`,
		minutes && `${minutes} min`,
	].filter(Boolean)
	const until = to && to !== from ? ` to ${dayInWords(to)}` : ''
	const row = pattern === undefined ? undefined : season.pattern?.find(({ id }) => id === pattern)
	const of = row ? ` (${capital(row.weekday)} ${row.kind})` : ''
	return `${what.join(', ')}: ${dayInWords(from)}${until}${of}`
}

/** 'Saturday 1 May 2027 15:00, match, natural firm, final (cancelled)'. */
export function sessionWords({ date, start, kind, surface, title, status }: Session): string {
	const day = `${weekdayName(date)} ${dayInWords(date)}`
	const words = [start ? `${day} ${start}` : day, kind, termWords(surface), title].filter(Boolean)
	return `${words.join(', ')}${status ? ` (${status})` : ''}`
}
