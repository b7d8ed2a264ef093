/**
 * A roster: cells of a table to players, each bad cell named by row and column. A bad row never
 * keeps the others out. Reading changes nothing.
 */
import { defaultAges } from '../records/consent.ts'
import type { RosterAnswers } from './roster-answers.ts'
import type { Column } from './roster-columns.table.ts'
import { columns, columnWords } from './roster-columns.table.ts'
import { type DateReading, dateReading } from './roster-dates.ts'
import { type Headings, headingsOf } from './roster-headings.ts'
import {
	type Line,
	type Reading,
	type RosterProblem,
	type RosterRow,
	readLine,
} from './roster-row.ts'

export interface Roster extends Headings {
	dates: DateReading
	rows: RosterRow[]
	problems: RosterProblem[]
	/** rows with a problem, as they read, to be repaired */
	bad: { row: number; cells: Partial<Record<Column, string>> }[]
}
/** Players of one day: a choice of this program. */
const mostRows = 500

interface RosterOf {
	/** becomes the club */
	team: string
	/** ISO date of the day */
	on: string
	ownConsentYears?: number
	answers?: RosterAnswers
	/** numbers that are on the board already */
	taken?: readonly string[]
}
/** @param cells of the whole list, as a spreadsheet counts its rows */
export function rosterFromCells(
	cells: readonly (readonly string[])[],
	{ team, on, ownConsentYears = defaultAges.ownConsentYears, answers = {}, taken = [] }: RosterOf,
): Roster {
	const headings = headingsOf(cells, answers)
	const left = new Set(answers.leaveOut)
	const lines = linesOf(cells, headings, answers).filter(({ row }) => !left.has(row))
	const dates = dateReading(
		lines.map(({ cell }) => cell('birthDate')),
		on,
		answers.dayOrder,
	)
	const whole = [...headingProblems(headings), ...lengthProblems(lines)]
	if (whole.length > 0) return { ...headings, dates, rows: [], problems: whole, bad: [] }
	const reading: Reading = {
		team,
		on,
		ownConsentYears,
		dayOrder: dates.order,
		sex: answers.sex,
		numbers: new Map(taken.map((number): [string, number] => [number, 0])),
	}
	const rows: RosterRow[] = []
	const problems: RosterProblem[] = []
	const bad: Roster['bad'] = []
	for (const line of lines) {
		const read = readLine(line, reading)
		if ('problems' in read) {
			problems.push(...read.problems)
			bad.push({ row: line.row, cells: cellsOf(line, headings) })
		} else rows.push(read)
	}
	return { ...headings, dates, rows: numbered(rows, reading.numbers), problems, bad }
}
/** The columns that the list has, and those of a name that stands in one cell. */
function cellsOf(line: Line, { headings }: Headings): Partial<Record<Column, string>> {
	const there = new Set(headings.flatMap(({ column }) => column ?? []))
	if (there.has('name')) for (const part of ['givenName', 'familyName'] as const) there.add(part)
	const cells = columns
		.filter((column) => there.has(column))
		.map((column): [Column, string] => [column, line.cell(column)])
	return Object.fromEntries(cells)
}
/** Who has no number is given the lowest that is free. */
function numbered(rows: readonly RosterRow[], given: ReadonlyMap<string, number>): RosterRow[] {
	let next = 1
	const free = (): string => {
		while (given.has(String(next))) next++
		return String(next++)
	}
	return rows.map((row) => (row.number === '' ? { ...row, number: free(), isNumbered: true } : row))
}
/** Lines with anything in them, below the headings. */
function linesOf(
	cells: readonly (readonly string[])[],
	{ titleLines, headings }: Headings,
	{ repairs = {} }: RosterAnswers,
): Line[] {
	const places = new Map(headings.flatMap(({ column, place }) => (column ? [[column, place]] : [])))
	return cells
		.map((line, index) => ({ line, row: index + 1 }))
		.slice(titleLines + 1)
		.filter(({ line }) => line.some((cell) => cell.trim() !== ''))
		.map(({ line, row }) => ({
			row,
			cell: (column) =>
				(repairs[String(row)]?.[column] ?? line[places.get(column) ?? -1] ?? '').trim(),
		}))
}
function headingProblems({ titleLines, headings, missing, twice }: Headings): RosterProblem[] {
	const row = titleLines + 1
	const given =
		headings
			.map(({ title }) => title)
			.filter(Boolean)
			.join(', ') || 'nothing'
	return [
		...missing.map((column) => ({
			row,
			column,
			code: 'missing',
			message: `missing, given ${given}, allowed: a column for the ${columnWords[column].says}`,
		})),
		...twice.flatMap(({ column, title }) =>
			column
				? [
						{
							row,
							column,
							code: 'given-twice',
							message:
								`given twice, given "${title}", allowed: one column for the ` +
								columnWords[column].says,
						},
					]
				: [],
		),
	]
}
function lengthProblems(lines: readonly Line[]): RosterProblem[] {
	if (lines.length <= mostRows) return []
	const message = `too many rows, given ${lines.length}, allowed: ${mostRows} or fewer`
	return [{ row: lines[mostRows]?.row ?? 1, column: '(file)', code: 'too-many', message }]
}
