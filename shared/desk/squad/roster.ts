/**
 * A roster: cells of a table to players, each bad cell named by row and column. Reading changes
 * nothing.
 */

import { addDays, ageYears, twoDigits } from '../../engine/visit/age.ts'
import { sexes } from '../../engine/visit/terms.ts'
import { type Player, playerSchema } from '../../engine/visit/visit.ts'
import { defaultAges, purposeNames } from '../records/consent.ts'

export interface RosterRow {
	row: number
	number: string
	player: Player
	/** purposes consented to on the form */
	consents: string[]
}
export interface RosterProblem {
	row: number
	column: string
	message: string
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
const most = 500
const sexWords: Record<string, Player['sex']> = {
	m: 'male',
	male: 'male',
	boy: 'male',
	f: 'female',
	female: 'female',
	girl: 'female',
}
/** Day and month in the only order that fits the whole column; undefined where both would. */
function dayFirst(cells: readonly string[]): boolean | undefined {
	const parts = cells.flatMap(
		(cell) =>
			(/^(\d{1,2})[./-](\d{1,2})[./-]\d{4}$/.exec(cell.trim())?.slice(1, 3).map(Number) as
				| [number, number]
				| undefined) ?? [],
	) as number[]
	const firsts = parts.filter((_, at) => at % 2 === 0)
	const seconds = parts.filter((_, at) => at % 2 === 1)
	return firsts.some((first) => first > 12)
		? true
		: seconds.some((second) => second > 12)
			? false
			: undefined
}
const isDay = (iso: string): boolean => addDays(iso, 0) === iso
const notADay = (given: string): string =>
	`not a date of the calendar, given "${given}", allowed: a date such as 2012-04-17 or 17/04/2012`
function isoOf(text: string, day: boolean | undefined): { iso?: string; says?: string } {
	const trimmed = text.trim()
	if (/^\d{4}-\d{2}-\d{2}$/.test(trimmed))
		return isDay(trimmed) ? { iso: trimmed } : { says: notADay(trimmed) }
	const found = /^(\d{1,2})[./-](\d{1,2})[./-](\d{4})$/.exec(trimmed)
	if (!found)
		return {
			says: `not a date, given "${trimmed}", allowed: a date such as 2012-04-17 or 17/04/2012`,
		}
	const [, a = '', b = '', year = ''] = found
	if (day === undefined && a !== b)
		return {
			says:
				`day and month cannot be told apart, given "${trimmed}", allowed: a date such as ` +
				'2012-04-17',
		}
	const [d, m] = day === false ? [b, a] : [a, b]
	const iso = `${year}-${twoDigits(m)}-${twoDigits(d)}`
	return isDay(iso) ? { iso } : { says: notADay(trimmed) }
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
	const problems: RosterProblem[] = []
	const columns = (cells[0] ?? []).map((one) => headings[one.toLowerCase().replace(/[^a-z]/g, '')])
	for (const want of required)
		if (!columns.includes(want))
			problems.push({
				row: 1,
				column: want,
				message:
					`missing, given ${(cells[0] ?? []).join(', ') || 'nothing'}, allowed: a column ` +
					`for ${want}`,
			})
	columns.forEach((column, at) => {
		if (column && columns.indexOf(column) !== at)
			problems.push({
				row: 1,
				column: column,
				message: `given twice, given "${cells[0]?.[at]}", allowed: one column for ${column}`,
			})
	})
	const body = cells
		.slice(1)
		.map((line, at) => ({ row: at + 2, line }))
		.filter(({ line }) => line.some((one) => one.trim() !== ''))
	if (body.length > most)
		problems.push({
			row: most + 2,
			column: '(file)',
			message: `too many rows, given ${body.length}, allowed: ${most} or fewer`,
		})
	if (problems.length > 0) return { rows: [], problems }
	const cell = (line: readonly string[], column: Column) =>
		(line[columns.indexOf(column)] ?? '').trim()
	const order = dayFirst(body.map(({ line }) => cell(line, 'birthDate')))
	const numbers = new Map<string, number>()
	const rows: RosterRow[] = []
	for (const { row, line } of body) {
		const bad: RosterProblem[] = []
		const number = cell(line, 'number')
		if (!/^\d{1,3}$/.test(number))
			bad.push({
				row,
				column: 'number',
				message: `not a number, given "${number}", allowed: 0 to 999`,
			})
		else if (numbers.has(number))
			bad.push({
				row,
				column: 'number',
				message:
					`given twice, given "${number}" in rows ${numbers.get(number)} and ${row}, ` +
					'allowed: a number once',
			})
		else numbers.set(number, row)
		const { iso, says } = isoOf(cell(line, 'birthDate'), order)
		if (says) bad.push({ row, column: 'birthDate', message: says })
		if (iso !== undefined && iso >= on)
			bad.push({
				row,
				column: 'birthDate',
				message: `not before the day, given "${iso}", allowed: before ${on}`,
			})
		const sex = sexWords[cell(line, 'sex').toLowerCase()]
		if (!sex)
			bad.push({
				row,
				column: 'sex',
				message: `not known, given "${cell(line, 'sex')}", allowed: ${sexes.join(', ')}`,
			})
		const consents = cell(line, 'consents')
			.split(/[;|,\s]+/)
			.filter(Boolean)
		for (const consent of consents)
			if (!(purposeNames as readonly string[]).includes(consent))
				bad.push({
					row,
					column: 'consents',
					message: `no such purpose, given "${consent}", allowed: ${purposeNames.join(', ')}`,
				})
		const guardian = cell(line, 'guardian')
		const [email, phone] = [cell(line, 'guardianEmail'), cell(line, 'guardianPhone')]
		if (!guardian && (email || phone))
			bad.push({
				row,
				column: 'guardian',
				message: `missing, given a contact without a name, allowed: the guardian's name`,
			})
		if (
			consents.length > 0 &&
			!guardian &&
			iso !== undefined &&
			bad.length === 0 &&
			ageYears(iso, on) < ownConsentYears
		)
			bad.push({
				row,
				column: 'guardian',
				message:
					'missing, given consents of a player too young to consent alone, allowed: the name of ' +
					'whoever consented',
			})
		const read = playerSchema.safeParse({
			givenName: cell(line, 'givenName'),
			familyName: cell(line, 'familyName'),
			birthDate: iso,
			sex,
			...(team ? { club: team } : {}),
			...(guardian
				? { guardian: { name: guardian, ...(email ? { email } : {}), ...(phone ? { phone } : {}) } }
				: {}),
		})
		if (!read.success && bad.length === 0)
			for (const issue of read.error.issues)
				bad.push({
					row,
					column: issue.path.join('.'),
					message:
						'cannot stand, given ' +
						`"${cell(line, (issue.path[1] === 'email' ? 'guardianEmail' : String(issue.path[0])) as Column)}", ` +
						`allowed: ${issue.message}`,
				})
		if (bad.length > 0) problems.push(...bad)
		else if (read.success) rows.push({ row, number, player: read.data, consents })
	}
	return { rows, problems }
}
