/** One line of a roster as a player, or what is wrong with its cells. */
import type { z } from 'zod'
import { ageYears } from '../../engine/visit/age.ts'
import { birthProblems } from '../../engine/visit/birth.ts'
import { nameProblems, tidyPlayer } from '../../engine/visit/names.ts'
import { sexes } from '../../engine/visit/terms.ts'
import { type Player, playerSchema } from '../../engine/visit/visit.ts'
import { languageTyped } from '../../engine/words/en/languages.ts'
import { type Purpose, purposeNames, purposes } from '../records/consent.ts'
import { type Column, sexWords } from './roster-columns.table.ts'
import { type DayOrder, isoOf, type WrongCell } from './roster-dates.ts'
import { hasLostLetters, nameParts } from './roster-names.ts'

export interface RosterRow {
	row: number
	number: string
	/** the list has no number for this player */
	isNumbered?: true
	player: Player
	/** purposes consented to on the form */
	consents: Purpose[]
}
export interface RosterProblem extends WrongCell {
	row: number
	column: string
}
/** A line of the table, its cells by column, with its row as a spreadsheet counts. */
export interface Line {
	row: number
	cell: (column: Column) => string
}
/** What a roster is read for. */
export interface Reading {
	/** becomes the club */
	team: string
	/** ISO date of the day */
	on: string
	ownConsentYears: number
	dayOrder: DayOrder | undefined
	/** of all, where the list does not say it */
	sex: Player['sex'] | undefined
	/** rows by the numbers given so far; 0 for a number that is on the board */
	numbers: Map<string, number>
}
type Wrong = [column: Column, wrong: WrongCell | undefined]
type ColumnProblem = Omit<RosterProblem, 'row'>
const found = (wrongs: readonly Wrong[]): ColumnProblem[] =>
	wrongs.flatMap(([column, wrong]) => (wrong ? [{ column, ...wrong }] : []))

/** Notes the number as given where the line can stand. */
export function readLine(line: Line, reading: Reading): RosterRow | { problems: RosterProblem[] } {
	const { row, cell } = line
	const names = namesOf(line)
	const { iso, wrong } = isoOf(cell('birthDate'), reading.on, reading.dayOrder)
	const sex = cell('sex') === '' ? reading.sex : sexWords[cell('sex').toLowerCase()]
	const { number, wrong: wrongNumber } = numberOf(cell('number'), row, reading.numbers)
	const consents = cell('consents')
		.split(/[;|,\s]+/)
		.filter(Boolean)
	const problems = found([
		['number', wrongNumber],
		...names.wrongs,
		['birthDate', wrong],
		['birthDate', birthProblem(iso, reading.on)],
		['sex', sex ? undefined : notASex(cell('sex'))],
		...consents.map((consent): Wrong => ['consents', purposeProblem(consent)]),
		['guardian', contactProblem(line)],
		['language', languageProblem(cell('language'))],
		['guardianLanguage', languageProblem(cell('guardianLanguage'))],
	])
	if (problems.length === 0)
		problems.push(...found([['guardian', consentProblem(line, consents, iso, reading)]]))
	const read =
		problems.length > 0 ? { problems } : playerOf(line, names, { iso, sex, team: reading.team })
	if ('problems' in read) return { problems: read.problems.map((problem) => ({ row, ...problem })) }
	if (number !== '') reading.numbers.set(number, row)
	return { row, number, player: read.player, consents: consents.filter(isPurpose) }
}
interface Names {
	givenName: string
	familyName: string
	wrongs: Wrong[]
}
/** The two names, of their own columns or parted from the one that holds both. */
function namesOf({ cell }: Line): Names {
	const [given, family, whole] = [cell('givenName'), cell('familyName'), cell('name')]
	const parts = whole === '' || (given && family) ? undefined : nameParts(whole)
	const cannotPart = whole !== '' && !parts && !(given && family)
	const lost = (['name', 'givenName', 'familyName', 'guardian'] as const).map(
		(column): Wrong => [
			column,
			hasLostLetters(cell(column)) ? lettersLost(cell(column)) : undefined,
		],
	)
	return {
		givenName: given || (parts?.givenName ?? ''),
		familyName: family || (parts?.familyName ?? ''),
		wrongs: [['familyName', cannotPart ? notParted(whole) : undefined], ...lost],
	}
}
const notParted = (whole: string): WrongCell => ({
	code: 'name-not-parted',
	message:
		`cannot be told from the given name, given "${whole}", allowed: family name, comma, given ` +
		'name; or each by itself',
})
const lettersLost = (text: string): WrongCell => ({
	code: 'letters-lost',
	message: `letters were lost on the way, given "${text}", allowed: the name as its bearer writes it`,
})
const notASex = (given: string): WrongCell => ({
	code: 'not-a-term',
	message: `not known, given "${given}", allowed: ${sexes.join(', ')}`,
})
/** The player of a line whose other cells can stand. */
function playerOf(
	line: Line,
	{ givenName, familyName }: Names,
	{ iso, sex, team }: { iso: string | undefined; sex: Player['sex'] | undefined; team: string },
): { player: Player } | { problems: ColumnProblem[] } {
	const read = playerSchema.safeParse({
		givenName,
		familyName,
		birthDate: iso,
		sex,
		...(team && { club: team }),
		...latinNameOf(line),
		...languageOf(line.cell('language')),
		...guardianOf(line),
	})
	if (!read.success)
		return {
			problems: read.error.issues.map((issue) => ({
				column: columnAt(`player.${issue.path.join('.')}`),
				...wrongIssue(line, issue),
			})),
		}
	const player = tidyPlayer(read.data)
	const problems = nameProblems(player).map(({ path, code, message }) => ({
		column: columnAt(path),
		code,
		message,
	}))
	return problems.length > 0 ? { problems } : { player }
}
/** The column that what stands at a path of the player came from. */
const columnByPath: Readonly<Record<string, Column>> = {
	'player.givenName': 'givenName',
	'player.familyName': 'familyName',
	'player.latinName.givenName': 'latinGivenName',
	'player.latinName.familyName': 'latinFamilyName',
	'player.guardian.name': 'guardian',
	'player.guardian.latinName': 'latinGuardian',
	'player.guardian.email': 'guardianEmail',
	'player.guardian.phone': 'guardianPhone',
	'player.preferredLanguage': 'language',
	'player.guardian.preferredLanguage': 'guardianLanguage',
}
const columnAt = (path: string): string => columnByPath[path] ?? path.replace(/^player\./, '')

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
const mostNumber = 999
/** 07 is 7; a line without one is given one later. */
function numberOf(
	text: string,
	row: number,
	numbers: ReadonlyMap<string, number>,
): { number: string; wrong?: WrongCell } {
	if (text === '') return { number: '' }
	if (!/^\d+$/.test(text) || Number(text) > mostNumber)
		return {
			number: text,
			wrong: {
				code: 'not-a-number',
				message: `not a number, given "${text}", allowed: 0 to ${mostNumber}`,
			},
		}
	const number = String(Number(text))
	const other = numbers.get(number)
	if (other === undefined) return { number }
	const where = other === 0 ? 'on the board already' : `in rows ${other} and ${row}`
	return {
		number,
		wrong: {
			code: 'given-twice',
			message: `given twice, given "${text}" ${where}, allowed: a number once`,
		},
	}
}
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
	const column = columnByPath[`player.${path.join('.')}`]
	const given = column ? cell(column) : ''
	return { code: 'cannot-stand', message: `cannot stand, given "${given}", allowed: ${message}` }
}
