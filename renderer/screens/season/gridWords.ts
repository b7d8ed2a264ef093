/** A session of the grid in full words, for those who do not see its marks. Pure. */
import { shortDayInWords, weekdayName } from '../../../shared/engine/plain/days.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { dayInWords } from '../../parts/dates.ts'
import type { Line } from './edits.ts'
import type { Opened } from './useSeasonEdits.ts'

export type Pairs = Opened['pairs']
export const statusWords = { cancelled: 'called off', bye: 'bye', injured: 'injured' } as const

/** Ids of the pairs that were worn, or are planned to be: one, or one for each part. */
export function wornPairs({ session, plan, past }: Line): readonly string[] {
	if (past && session.worn !== undefined) return [session.worn]
	if (plan?.parts) return plan.parts.map(({ pair }) => pair)
	return plan?.pair === undefined ? [] : [plan.pair]
}
/** '?' for a pair that is recorded no more. */
export const letterOf = (pairs: Pairs, id: string): string =>
	pairs.find((pair) => pair.id === id)?.letter ?? '?'
/** 'pair A, match boots'. */
function pairWords(pairs: Pairs, id: string): string {
	const pair = pairs.find((known) => known.id === id)
	return pair ? `pair ${pair.letter}, ${pair.name}` : 'a pair that is recorded no more'
}
function wornWords(line: Line, pairs: Pairs): string {
	if (line.session.status) return statusWords[line.session.status]
	const worn = wornPairs(line).map((id) => pairWords(pairs, id))
	if (worn.length > 0) return worn.join(', then ')
	return line.plan ? 'no pair' : 'not planned'
}
/** '6 Feb', as a day of the grid is headed. */
export const shortDay = shortDayInWords
export const fullDay = (date: string): string => `${weekdayName(date)} ${dayInWords(date)}`
/** 'Saturday 6 February 2027: match 10:30, 80 minutes, natural firm, dry: pair A, match boots'. */
export function lineWords(line: Line, pairs: Pairs): string {
	const { date, start, minutes, kind, title, surface, ground = 'dry', pinned } = line.session
	const what = [
		start ? `${kind} ${start}` : kind,
		title,
		`${minutes} minutes`,
		termWords(surface),
		ground,
	].filter(Boolean)
	const more = [
		pinned === undefined ? '' : `pinned to ${pairWords(pairs, pinned)}`,
		line.plan && line.plan.unmet.length > 0 ? 'a wish is not met' : '',
		line.past ? 'past' : '',
	].filter(Boolean)
	return [`${fullDay(date)}: ${what.join(', ')}: ${wornWords(line, pairs)}`, ...more].join('; ')
}
