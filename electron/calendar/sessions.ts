/** An occurrence of an event made sessions, asked one question after another. */

import { addDays } from '../../shared/engine/plain/days.ts'
import { present } from '../../shared/engine/plain/present.ts'
import type { SeasonSession } from '../../shared/engine/season/pattern.ts'
import {
	ask,
	type ImportChoices,
	type Incoming,
	kindOf,
} from '../../shared/engine/season/preview.ts'
import { surfaces } from '../../shared/engine/visit/terms.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'
import { usualMinutes } from './lengths.ts'
import { type Occurrence, placed } from './occurrences.ts'
import { dateOf, sequenceOf, textOf, titleOf } from './properties.ts'

/**
 * The longest all-day event taken for sessions, a camp; and how far back one may begin and still
 * reach into the season.
 */
export const mostDays = 31
const mostMinutes = 600

function kindOfEvent(
	title: string,
	choices: ImportChoices,
	incoming: Incoming,
): Session['kind'] | undefined {
	const kind = kindOf(title, choices)
	if (!kind)
		ask(incoming.questions, {
			key: `kinds.${title}`,
			...state('season.ask-kind', { title }),
			options: ['training', 'match'],
		})
	return kind
}
/** The surface by the answer for its place, else that of the whole list. */
function surfaceOf(
	place: string | undefined,
	choices: ImportChoices,
	incoming: Incoming,
): Session['surface'] | undefined {
	const surface = (place === undefined ? undefined : choices.surfaces?.[place]) ?? choices.surface
	if (!surface)
		ask(
			incoming.questions,
			place === undefined
				? {
						key: 'surface',
						...state('season.ask-surface', { of: 'sessions-without-place' }),
						options: [...surfaces],
					}
				: {
						key: `surfaces.${place}`,
						...state('season.ask-surface-at', { place }),
						options: [...surfaces],
					},
		)
	return surface
}
/** The last day of an all-day event, whose end is the day after it; undefined for other events. */
const lastDayOf = ({ start, end }: Occurrence): string | undefined =>
	start.isDate && end ? addDays(dateOf(end), -1) : undefined
/** Minutes that the event lasts; 0 where it does not say, or ends before it begins. */
function minutesOf({ start, end }: Occurrence): number {
	if (start.isDate || !end) return 0
	return Math.max(0, Math.round((end.toUnixTime() - start.toUnixTime()) / 60))
}
/** Why an event is too long for a session; undefined where it is not. */
function tooLong(found: Occurrence, title: string, date: string): Statement | undefined {
	const last = lastDayOf(found)
	if (last !== undefined && addDays(date, mostDays) < last)
		return state('season.event-too-many-days', { title, date, last, mostDays })
	const minutes = minutesOf(found)
	return minutes > mostMinutes
		? state('season.event-too-long', { title, date, minutes, mostMinutes })
		: undefined
}
/** One session for each day of an all-day event. */
function byDay(session: SeasonSession, last: string): SeasonSession[] {
	const days = [session]
	for (let date = addDays(session.date, 1); date <= last; date = addDays(date, 1))
		days.push({ ...session, date, id: `${session.id}/day${days.length + 1}` })
	return days
}
/** The sessions of an occurrence: none where something must be asked first or it cannot be one. */
export function sessionsOf(
	found: Occurrence,
	choices: ImportChoices,
	incoming: Incoming,
): SeasonSession[] {
	const { event } = found
	const { date, start } = placed(found.start, choices)
	const title = titleOf(event) ?? 'without title'
	const place = textOf(event, 'location')
	const kind = kindOfEvent(title, choices, incoming)
	const surface = kind && surfaceOf(place, choices, incoming)
	if (!surface) return []
	const problem = tooLong(found, title, date)
	if (problem) {
		incoming.problems.push(problem)
		return []
	}
	const minutes = minutesOf(found)
	const sequence = sequenceOf(event)
	const session: SeasonSession = present({
		date,
		start,
		id: found.id,
		kind,
		surface,
		title: title.slice(0, 200),
		minutes: minutes > 0 ? minutes : usualMinutes(kind, choices),
		place: place?.slice(0, 200),
		minutesAssumed: minutes > 0 ? undefined : true,
		ground: choices.ground,
		team: choices.team,
		code: choices.code,
		status: found.cancelled ? ('cancelled' as const) : undefined,
		source: choices.source,
		sequence: Number.isInteger(sequence) && sequence > 0 ? sequence : undefined,
	})
	const last = lastDayOf(found)
	return last === undefined ? [session] : byDay(session, last)
}
