/** Fixture lists as CSV: RFC 4180, and what spreadsheets really write. */
import Papa from 'papaparse'
import { dayInWords } from '../../shared/engine/plain/days.ts'
import { ask, type ImportChoices, type Incoming } from '../../shared/engine/season/preview.ts'
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
	for (const { code, row = 0, message } of parsed.errors)
		if (code !== 'UndetectableDelimiter')
			incoming.problems.push({
				where: `row ${row + 1}`,
				says: `Row ${row + 1}: ${message}. Check its quotation marks.`,
			})
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
	const read = (order: DateOrder): string => {
		const date = dateFrom(example, order)
		return date === undefined ? 'no date' : dayInWords(date)
	}
	ask(incoming.questions, {
		key: 'dateOrder',
		says: `Is ${example} ${read('day-month')} (day first) or ${read('month-day')} (month first)?`,
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
		incoming.problems.push({
			where: 'Date',
			says: 'The column Date mixes day first and month first. Write the dates as YYYY-MM-DD.',
		})
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
		incoming.problems.push({
			where: 'file',
			says: 'The file is empty. Export the list again as CSV.',
		})
		return incoming
	}
	const columns = columnsOf(head)
	if (!columns.has('date')) {
		incoming.problems.push({
			where: 'row 1',
			says:
				`No column of dates was found, given ${head.join(', ')}, allowed: a first row with ` +
				'a column named Date.',
		})
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
