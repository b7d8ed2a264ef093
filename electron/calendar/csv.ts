/** Fixture lists as CSV: RFC 4180, and what spreadsheets really write. */
import Papa from 'papaparse'
import { present } from '../../shared/engine/plain/present.ts'
import { ask, type ImportChoices, type Incoming } from '../../shared/engine/season/preview.ts'
import { state } from '../../shared/engine/words/statement.ts'
import { type Column, columnsOf } from './csv-columns.ts'
import { sessionOfRow } from './csv-row.ts'
import { assumedLengthNotes } from './lengths.ts'
import { type DateOrder, dateFrom, dateOrderOf, isNumericDate } from './written-dates.ts'

/** The rows of a text, the first apart; quotation marks that do not close are problems. */
function rowsOf(
	text: string,
	incoming: Incoming,
): { head: string[] | undefined; rows: string[][] } {
	const parsed = Papa.parse<string[]>(text.replace(/^\uFEFF/, ''), {
		skipEmptyLines: 'greedy',
		delimitersToGuess: [';', '\t', ',', '|'],
	})
	for (const { code, row = 0 } of parsed.errors)
		if (code !== 'UndetectableDelimiter')
			incoming.problems.push(state('season.row-marks', { row: row + 1 }))
	const [head, ...rows] = parsed.data
	return { head, rows }
}
const cellOf = (
	row: readonly string[],
	columns: ReadonlyMap<Column, number>,
	column: Column,
): string => {
	const place = columns.get(column)
	return place === undefined ? '' : (row[place] ?? '').trim()
}
/** Asks what a date means that can be read two ways. */
function askDateOrder(incoming: Incoming, example: string): void {
	ask(incoming.questions, {
		key: 'dateOrder',
		...state('season.ask-date-order', {
			given: example,
			...present({
				dayFirst: dateFrom(example, 'day-month'),
				monthFirst: dateFrom(example, 'month-day'),
			}),
		}),
		options: ['day-month', 'month-day'],
	})
}
/** What comes first in the dates of a list; undefined where it mixes both or must be asked. */
function orderOf(
	dates: readonly string[],
	choices: ImportChoices,
	incoming: Incoming,
): DateOrder | undefined {
	const order = dateOrderOf(dates)
	if (order === 'mixed') {
		incoming.problems.push(state('season.table-mixed-dates'))
		return undefined
	}
	if (order === 'unknown' && !choices.dateOrder) {
		askDateOrder(incoming, dates.find(isNumericDate) ?? '')
		return undefined
	}
	return order === 'day-month' || order === 'month-day' ? order : (choices.dateOrder ?? 'day-month')
}
/** Makes ids of 400 characters at most; what was there before gets a number. */
function idMaker(): (base: string) => string {
	const known = new Map<string, number>()
	return (base) => {
		const count = (known.get(base) ?? 0) + 1
		known.set(base, count)
		return (count === 1 ? base : `${base}/${count}`).slice(0, 400)
	}
}
/**
 * Every session of a CSV list within the season. Rows that cannot be read are named by their
 * number.
 */
export function readCsv(text: string, choices: ImportChoices): Incoming {
	const incoming: Incoming = { sessions: [], problems: [], questions: [], notes: [] }
	const { head, rows } = rowsOf(text, incoming)
	if (!head) {
		incoming.problems.push(state('season.table-empty'))
		return incoming
	}
	const columns = columnsOf(head)
	if (!columns.has('date')) {
		incoming.problems.push(state('season.table-no-dates', { given: head }))
		return incoming
	}
	const dates = rows.map((row) => cellOf(row, columns, 'date'))
	const order = orderOf(dates, choices, incoming)
	if (!order) return incoming
	const idOf = idMaker()
	for (const [index, row] of rows.entries()) {
		const session = sessionOfRow({
			number: index + 2,
			cell: (column) => cellOf(row, columns, column),
			order,
			idOf,
			choices,
			incoming,
		})
		if (session) incoming.sessions.push(session)
	}
	incoming.notes.push(...assumedLengthNotes(incoming.sessions))
	return incoming
}
