/**
 * A roster: cells of a table to players, each bad cell named by row and column. Reading changes
 * nothing.
 */
import type { z } from 'zod'
import { ageYears } from '../../engine/visit/age.ts'
import { birthProblems } from '../../engine/visit/birth.ts'
import { nameProblems, tidyPlayer } from '../../engine/visit/names.ts'
import { sexes } from '../../engine/visit/terms.ts'
import { type Player, playerSchema } from '../../engine/visit/visit.ts'
import { languageTyped } from '../../engine/words/en/languages.ts'
import { defaultAges, type Purpose, purposeNames, purposes } from '../records/consent.ts'
import { type Column, columnOf, headings, required } from './roster-columns.ts'
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
	note('birthDate', birthProblem(iso, reading.on))
	const sex = sexWords[cell('sex').toLowerCase()]
	if (!sex)
		note('sex', {
			code: 'not-a-term',
			message: `not known, given "${cell('sex')}", allowed: ${sexes.join(', ')}`,
		})
	const consents = consentsOf(cell('consents'))
	for (const consent of consents) note('consents', purposeProblem(consent))
	note('guardian', contactProblem(line))
	note('language', languageProblem(cell('language')))
	note('guardianLanguage', languageProblem(cell('guardianLanguage')))
	if (problems.length === 0) note('guardian', consentProblem(line, consents, iso, reading))
	if (problems.length > 0) return { problems }
	const read = playerOf(line, { iso, sex, team: reading.team })
	return 'problems' in read
		? { problems: read.problems.map((problem) => ({ row, ...problem })) }
		: { row, number, player: read.player, consents: consents.filter(isPurpose) }
}
type ColumnProblem = Omit<RosterProblem, 'row'>
/** The player of a line whose other cells can stand. */
function playerOf(
	line: Line,
	{ iso, sex, team }: { iso: string | undefined; sex: Player['sex'] | undefined; team: string },
): { player: Player } | { problems: ColumnProblem[] } {
	const { cell } = line
	const read = playerSchema.safeParse({
		givenName: cell('givenName'),
		familyName: cell('familyName'),
		birthDate: iso,
		sex,
		...(team && { club: team }),
		...latinNameOf(line),
		...languageOf(cell('language')),
		...guardianOf(line),
	})
	const columnAt = (path: string): string => columnOf[`player.${path}`] ?? path
	if (!read.success)
		return {
			problems: read.error.issues.map((issue) => ({
				column: columnAt(issue.path.join('.')),
				...wrongIssue(line, issue),
			})),
		}
	const player = tidyPlayer(read.data)
	const problems = nameProblems(player).map(({ path, code, message }) => ({
		column: columnAt(path.replace(/^player\./, '')),
		code,
		message,
	}))
	return problems.length > 0 ? { problems } : { player }
}
function birthProblem(iso: string | undefined, on: string): WrongCell | undefined {
	if (iso === undefined) return undefined
	if (iso >= on)
		return {
			code: 'not-before-day',
			message: `not before the day, given "${iso}", allowed: before ${on}`,
		}
	return birthProblems(iso, on, 'birthDate')[0]
}
/** The spelling for paper of a line, where it has one. */
function latinNameOf({ cell }: Line) {
	const [givenName, familyName] = [cell('latinGivenName'), cell('latinFamilyName')]
	return givenName || familyName ? { latinName: { givenName, familyName } } : {}
}
/** A preferred language of a line, by its name or tag, where it has one. */
function languageOf(typed: string) {
	const preferredLanguage = languageTyped(typed)
	return preferredLanguage === undefined ? {} : { preferredLanguage }
}
const languageProblem = (typed: string): WrongCell | undefined =>
	typed === '' || languageTyped(typed) !== undefined
		? undefined
		: {
				code: 'not-a-term',
				message:
					`no such language, given "${typed}", allowed: its English name such as Arabic, or its code ` +
					'of ISO 639 such as ar',
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
	const latinName = cell('latinGuardian')
	return {
		guardian: {
			name,
			...(latinName && { latinName }),
			...languageOf(cell('guardianLanguage')),
			...(email && { email }),
			...(phone && { phone }),
		},
	}
}
const contactProblem = ({ cell }: Line): WrongCell | undefined =>
	!cell('guardian') && (cell('guardianEmail') || cell('guardianPhone') || cell('guardianLanguage'))
		? {
				code: 'missing',
				message: `missing, given a contact or language without a name, allowed: the guardian's name`,
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
