/**
 * A roster: cells of a table to players, each bad cell named by row and column. Reading changes
 * nothing.
 */
import type { z } from 'zod'
import { ageYears } from '../../engine/visit/age.ts'
import { sexes } from '../../engine/visit/terms.ts'
import { type Player, playerSchema } from '../../engine/visit/visit.ts'
import { defaultAges, type Purpose, purposeNames, purposes } from '../records/consent.ts'
import { type DayOrder, dayOrderOf, isoOf, type WrongCell } from './roster-dates.ts'

interface RosterRow {
	row: number
	number: string
	player: Player
	/** purposes consented to on the form */
	consents: Purpose[]
}
interface RosterProblem extends WrongCell {
	row: number
	column: string
}
export interface Roster {
	rows: RosterRow[]
	problems: RosterProblem[]
}
type Column =
	| 'number'
	| 'givenName'
	| 'familyName'
	| 'birthDate'
	| 'sex'
	| 'guardian'
	| 'guardianEmail'
	| 'guardianPhone'
	| 'consents'
/** Headings as they come, in lower case without spaces. */
const headings: Record<string, Column> = {
	number: 'number',
	no: 'number',
	bib: 'number',
	shirt: 'number',
	givenname: 'givenName',
	firstname: 'givenName',
	given: 'givenName',
	familyname: 'familyName',
	lastname: 'familyName',
	surname: 'familyName',
	birthdate: 'birthDate',
	dateofbirth: 'birthDate',
	dob: 'birthDate',
	born: 'birthDate',
	sex: 'sex',
	guardian: 'guardian',
	guardianname: 'guardian',
	parent: 'guardian',
	guardianemail: 'guardianEmail',
	guardianmail: 'guardianEmail',
	parentemail: 'guardianEmail',
	guardianphone: 'guardianPhone',
	parentphone: 'guardianPhone',
	consents: 'consents',
	consent: 'consents',
}
const required: readonly Column[] = ['number', 'givenName', 'familyName', 'birthDate', 'sex']
/** Players of one day: a choice of this program. */
const mostRows = 500
const sexWords: Record<string, Player['sex']> = {
	m: 'male',
	male: 'male',
	boy: 'male',
	f: 'female',
	female: 'female',
	girl: 'female',
}

/** A line of the table, its cells by column, with its row as a spreadsheet counts. */
interface Line {
	row: number
	cell: (column: Column) => string
}
/** What a roster is read for. */
interface Reading {
	/** becomes the club */
	team: string
	/** ISO date of the day */
	on: string
	ownConsentYears: number
	dayOrder: DayOrder
	/** rows by the numbers given so far */
	numbers: Map<string, number>
}
/**
 * @param cells the heading row first. @param team becomes the club. @param on ISO date of the day
 */
export function rosterFromCells(
	cells: readonly (readonly string[])[],
	team: string,
	on: string,
	ownConsentYears = defaultAges.ownConsentYears,
): Roster {
	const [heading = [], ...body] = cells
	const columns = heading.map((title) => headings[title.toLowerCase().replace(/[^a-z]/g, '')])
	const lines = linesOf(body, columns)
	const problems = [...headingProblems(heading, columns), ...lengthProblems(lines)]
	if (problems.length > 0) return { rows: [], problems }
	const dayOrder = dayOrderOf(lines.map(({ cell }) => cell('birthDate')))
	const reading: Reading = { team, on, ownConsentYears, dayOrder, numbers: new Map() }
	const rows: RosterRow[] = []
	for (const line of lines) {
		const read = readLine(line, reading)
		if ('problems' in read) problems.push(...read.problems)
		else rows.push(read)
	}
	return { rows, problems }
}
/** Lines with anything in them. */
const linesOf = (
	body: readonly (readonly string[])[],
	columns: readonly (Column | undefined)[],
): Line[] =>
	body
		.map((cells, index) => ({
			// the heading is row 1
			row: index + 2,
			isEmpty: cells.every((cell) => cell.trim() === ''),
			cell: (column: Column) => (cells[columns.indexOf(column)] ?? '').trim(),
		}))
		.filter((line) => !line.isEmpty)

function headingProblems(
	heading: readonly string[],
	columns: readonly (Column | undefined)[],
): RosterProblem[] {
	const missing = required
		.filter((wanted) => !columns.includes(wanted))
		.map((wanted) => ({
			row: 1,
			column: wanted,
			code: 'missing',
			message: `missing, given ${heading.join(', ') || 'nothing'}, allowed: a column for ${wanted}`,
		}))
	const twice = columns.flatMap((column, index) =>
		column && columns.indexOf(column) !== index
			? [
					{
						row: 1,
						column,
						code: 'given-twice',
						message: `given twice, given "${heading[index]}", allowed: one column for ${column}`,
					},
				]
			: [],
	)
	return [...missing, ...twice]
}
function lengthProblems(lines: readonly Line[]): RosterProblem[] {
	if (lines.length <= mostRows) return []
	const message = `too many rows, given ${lines.length}, allowed: ${mostRows} or fewer`
	return [{ row: mostRows + 2, column: '(file)', code: 'too-many', message }]
}
function readLine(line: Line, reading: Reading): RosterRow | { problems: RosterProblem[] } {
	const { row, cell } = line
	const problems: RosterProblem[] = []
	const note = (column: string, wrong: WrongCell | undefined) => {
		if (wrong !== undefined) problems.push({ row, column, ...wrong })
	}
	const number = cell('number')
	note('number', numberProblem(number, row, reading.numbers))
	const { iso, wrong } = isoOf(cell('birthDate'), reading.dayOrder)
	note('birthDate', wrong)
	if (iso !== undefined && iso >= reading.on)
		note('birthDate', {
			code: 'not-before-day',
			message: `not before the day, given "${iso}", allowed: before ${reading.on}`,
		})
	const sex = sexWords[cell('sex').toLowerCase()]
	if (!sex)
		note('sex', {
			code: 'not-a-term',
			message: `not known, given "${cell('sex')}", allowed: ${sexes.join(', ')}`,
		})
	const consents = consentsOf(cell('consents'))
	for (const consent of consents) note('consents', purposeProblem(consent))
	note('guardian', contactProblem(line))
	if (problems.length === 0) note('guardian', consentProblem(line, consents, iso, reading))
	const read = playerSchema.safeParse({
		givenName: cell('givenName'),
		familyName: cell('familyName'),
		birthDate: iso,
		sex,
		...(reading.team && { club: reading.team }),
		...guardianOf(line),
	})
	if (!read.success && problems.length === 0)
		for (const issue of read.error.issues) note(issue.path.join('.'), wrongIssue(line, issue))
	return read.success && problems.length === 0
		? { row, number, player: read.data, consents: consents.filter(isPurpose) }
		: { problems }
}
/** Notes the number as given where it can stand. */
function numberProblem(
	number: string,
	row: number,
	numbers: Map<string, number>,
): WrongCell | undefined {
	if (!/^\d{1,3}$/.test(number))
		return { code: 'not-a-number', message: `not a number, given "${number}", allowed: 0 to 999` }
	const other = numbers.get(number)
	if (other !== undefined)
		return {
			code: 'given-twice',
			message: `given twice, given "${number}" in rows ${other} and ${row}, allowed: a number once`,
		}
	numbers.set(number, row)
	return undefined
}
const consentsOf = (cell: string): string[] => cell.split(/[;|,\s]+/).filter(Boolean)
const isPurpose = (name: string): name is Purpose => Object.hasOwn(purposes, name)
const purposeProblem = (purpose: string): WrongCell | undefined =>
	isPurpose(purpose)
		? undefined
		: {
				code: 'not-a-purpose',
				message: `no such purpose, given "${purpose}", allowed: ${purposeNames.join(', ')}`,
			}

/** The guardian of a line, where it names one. */
function guardianOf({ cell }: Line) {
	const name = cell('guardian')
	if (!name) return {}
	const [email, phone] = [cell('guardianEmail'), cell('guardianPhone')]
	return { guardian: { name, ...(email && { email }), ...(phone && { phone }) } }
}
const contactProblem = ({ cell }: Line): WrongCell | undefined =>
	!cell('guardian') && (cell('guardianEmail') || cell('guardianPhone'))
		? {
				code: 'missing',
				message: `missing, given a contact without a name, allowed: the guardian's name`,
			}
		: undefined

/** Who is too young to consent alone needs somebody who did. @param iso the birth date */
function consentProblem(
	{ cell }: Line,
	consents: readonly string[],
	iso: string | undefined,
	{ on, ownConsentYears }: Reading,
): WrongCell | undefined {
	if (consents.length === 0 || cell('guardian') || iso === undefined) return undefined
	return ageYears(iso, on) < ownConsentYears
		? {
				code: 'missing',
				message:
					'missing, given consents of a player too young to consent alone, allowed: the name ' +
					'of whoever consented',
			}
		: undefined
}
type Issue = z.core.$ZodIssue
/** The cell that a problem of the player's schema is about. */
function wrongIssue({ cell }: Line, { path, message }: Issue): WrongCell {
	const column = path[1] === 'email' ? 'guardianEmail' : String(path[0])
	const given = cell(column as Column)
	return { code: 'cannot-stand', message: `cannot stand, given "${given}", allowed: ${message}` }
}
