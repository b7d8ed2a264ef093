/** A row of a fixture list made a session, asked one question after another. */
import { present } from '../../shared/engine/plain/present.ts'
import type { SeasonSession } from '../../shared/engine/season/pattern.ts'
import {
	ask,
	type ImportChoices,
	type Incoming,
	kindOf,
} from '../../shared/engine/season/preview.ts'
import { type Surface, surfaces, termWords } from '../../shared/engine/visit/terms.ts'
import type { Session } from '../../shared/engine/visit/visit.ts'
import { type Statement, state } from '../../shared/engine/words/statement.ts'
import type { Column } from './csv-columns.ts'
import { usualMinutes } from './lengths.ts'
import { type DateOrder, dateFrom, minutesBetween, timeFrom } from './written-dates.ts'

/** A row while it is read. What cannot be read goes to the problems, by the row's number. */
export interface Row {
	/** as a spreadsheet counts it */
	number: number
	/** the text of a column, trimmed; empty where the list has no such column */
	cell: (column: Column) => string
	order: DateOrder
	/** an id of its own from what the row is known by, which two rows may have in common */
	idOf: (base: string) => string
	choices: ImportChoices
	incoming: Incoming
}
function problem({ incoming }: Row, said: Statement): undefined {
	incoming.problems.push(said)
	return undefined
}
function dateOf(row: Row): string | undefined {
	const { order } = row
	const text = row.cell('date')
	return (
		dateFrom(text, order) ??
		problem(row, state('season.row-date', { row: row.number, given: text, order }))
	)
}
function startOf(row: Row): string | 'unset' | undefined {
	const text = row.cell('time')
	return timeFrom(text) ?? problem(row, state('season.row-time', { row: row.number, given: text }))
}
const titleOf = ({ cell }: Row): string => cell('title') || cell('kind') || 'without title'
/** Training or match: as the row says, else by the words of its type or title, else it is asked. */
function kindOfRow(row: Row): Session['kind'] | undefined {
	const { cell, choices, incoming } = row
	const title = titleOf(row)
	const typed = cell('kind').toLowerCase()
	if (typed === 'training' || typed === 'match') return typed
	const kind = kindOf(cell('kind') || title, choices) ?? kindOf(title, choices)
	if (!kind)
		ask(incoming.questions, {
			key: `kinds.${title}`,
			...state('season.ask-kind', { title }),
			options: ['training', 'match'],
		})
	return kind
}
/** The surface that a text names, by the answers given or in the words of the program. */
function surfaceFrom(text: string, choices: ImportChoices): Surface | undefined {
	const value = text.toLowerCase()
	return (
		choices.surfaces?.[text] ??
		surfaces.find(
			(surface) =>
				surface === value.replaceAll(' ', '-') || termWords(surface).toLowerCase() === value,
		)
	)
}
function askSurface({ incoming }: Row, named: string, place: string): void {
	const text = named || place
	ask(
		incoming.questions,
		text === ''
			? {
					key: 'surface',
					...state('season.ask-surface', { of: 'list' }),
					options: [...surfaces],
				}
			: {
					key: `surfaces.${text}`,
					...(named
						? state('season.ask-surface-named', { named })
						: state('season.ask-surface-at', { place })),
					options: [...surfaces],
				},
	)
}
/** The surface: as the row names it, else that of its place, else that of the whole list. */
function surfaceOf(row: Row): Surface | undefined {
	const { cell, choices } = row
	const [named, place] = [cell('surface'), cell('place')]
	const surface =
		(named === '' ? undefined : surfaceFrom(named, choices)) ??
		(place === '' ? undefined : choices.surfaces?.[place]) ??
		(named === '' ? choices.surface : undefined)
	if (!surface) askSurface(row, named, place)
	return surface
}
const grounds = ['dry', 'damp', 'wet'] as const
/** The ground of the row; that of the whole list, or undefined, where the row has none. */
function groundOf(row: Row): { ground: Session['ground'] } | undefined {
	const text = row.cell('ground').toLowerCase()
	if (text === '') return { ground: row.choices.ground }
	const ground = grounds.find((known) => known === text)
	return ground
		? { ground }
		: problem(row, state('season.row-ground', { row: row.number, given: text, allowed: grounds }))
}
/** As long as one session may last. */
const [leastMinutes, mostMinutes] = [1, 600]
const decimal = (text: string): number => Number(text.replace(',', '.'))
/** Minutes by the columns of the row: minutes, else hours, else start and end. */
function writtenMinutes({ cell }: Row, start: string): number | undefined {
	if (cell('minutes') !== '') return decimal(cell('minutes'))
	if (cell('hours') !== '') return decimal(cell('hours')) * 60
	const end = timeFrom(cell('end'))
	return end === undefined || end === 'unset' || start === 'unset'
		? undefined
		: minutesBetween(start, end)
}
function lengthOf(
	row: Row,
	kind: Session['kind'],
	start: string,
): Pick<Session, 'minutes' | 'minutesAssumed'> | undefined {
	const { cell } = row
	const minutes = writtenMinutes(row, start)
	if (minutes === undefined)
		return { minutes: usualMinutes(kind, row.choices), minutesAssumed: true }
	if (minutes >= leastMinutes && minutes <= mostMinutes) return { minutes: Math.round(minutes) }
	const given = cell('minutes') || cell('hours') || cell('end')
	return problem(
		row,
		state('season.row-length', { row: row.number, given, leastMinutes, mostMinutes }),
	)
}
function statusOf(row: Row): Session['status'] {
	const value = row.cell('status').toLowerCase()
	if (/^cancel|postponed|abandoned/.test(value)) return 'cancelled'
	if (value === 'bye' || value === 'injured') return value
	return /^bye$/i.test(titleOf(row)) ? 'bye' : undefined
}
/**
 * The session of a row; undefined where it lies outside the season, cannot be read or must be asked
 * about first.
 */
export function sessionOfRow(row: Row): SeasonSession | undefined {
	const { cell, choices } = row
	const date = dateOf(row)
	if (!date || date < choices.from || date > choices.to) return undefined
	const start = startOf(row)
	const kind = start && kindOfRow(row)
	const surface = kind && surfaceOf(row)
	const ground = surface && groundOf(row)
	const length = start && kind && ground && lengthOf(row, kind, start)
	if (!length || !kind || !surface || !ground) return undefined
	const title = titleOf(row)
	const team = cell('team') || choices.team
	// without an id of its own a row is known by its day, kind, team and title, so that a new start
	// time is a change and not a new session
	const base = cell('id') || `${date}/${kind}/${team ?? ''}/${title}`
	return present({
		date,
		start: start === 'unset' ? undefined : start,
		minutes: length.minutes,
		kind,
		surface,
		ground: ground.ground,
		team: team || undefined,
		code: choices.code,
		id: row.idOf(`${choices.source}/${base}`),
		title: title.slice(0, 200),
		place: cell('place').slice(0, 200) || undefined,
		status: statusOf(row),
		minutesAssumed: length.minutesAssumed,
		source: choices.source,
	})
}
