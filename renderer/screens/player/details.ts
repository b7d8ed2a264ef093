/** Between the flat text of the player form and the player of the visit file. */
import type { z } from 'zod'
import { birthFault, mostYears, unusualAge } from '../../../shared/engine/visit/birth.ts'
import { fieldMeta } from '../../../shared/engine/visit/field-meta.ts'
import { hasOtherLetters, nameProblemsIn, tidyName } from '../../../shared/engine/visit/names.ts'
import type { Problem } from '../../../shared/engine/visit/problems.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import { languageEntry, languageTyped } from '../../../shared/engine/words/en/languages.ts'
import { dayInWords } from '../../parts/dates.ts'
import { issueWords } from '../../parts/form.tsx'

export type Player = z.infer<typeof playerSchema>
export type Form = Readonly<Record<string, string>>
const latinPaths = ['latinName.givenName', 'latinName.familyName'] as const
const latinGuardian = 'guardian.latinName'
const allPersonPaths = [
	'givenName',
	'familyName',
	...latinPaths,
	'birthDate',
	'sex',
	'club',
	'email',
	'phone',
	'preferredLanguage',
] as const
const allGuardianPaths = [
	'guardian.name',
	latinGuardian,
	'guardian.relation',
	'guardian.email',
	'guardian.phone',
	'guardian.preferredLanguage',
] as const
export const paths: readonly string[] = [...allPersonPaths, ...allGuardianPaths]
/** Typed and shown by its name, kept as its tag. */
export const isLanguage = (path: string): boolean => path.endsWith('preferredLanguage')
/** Addresses that documents go to: what is new of them is typed twice. */
export const twicePaths: readonly string[] = ['email', 'guardian.email']
const plainAddress = (text = ''): string => text.trim().toLowerCase()
/** What is wrong where a new address and its second typing differ, by field of the second. */
export const twiceProblems = (typed: Form, again: Form): Record<string, string> =>
	Object.fromEntries(
		twicePaths
			.filter((path) => isFilled(typed, path))
			.filter((path) => plainAddress(typed[path]) !== plainAddress(again[path]))
			.map((path) => [
				path,
				`${titleOf(path)} was typed as ${typed[path]?.trim()} and once more as ` +
					`${again[path]?.trim() || 'nothing'}. Type both anew.`,
			]),
	)
export const titleOf = (path: string) => fieldMeta(playerSchema, path).title

const isFilled = (form: Form, path: string): boolean => Boolean(form[path]?.trim())
/** A spelling in Latin letters is asked for where a name has others, and shown where there is one. */
const wantsLatin = (form: Form, names: readonly string[], latin: readonly string[]): boolean =>
	latin.some((path) => isFilled(form, path)) ||
	names.some((path) => hasOtherLetters(form[path] ?? ''))
/** The fields of the person, in their order. */
export function personPaths(form: Form): readonly string[] {
	const isWanted = wantsLatin(form, ['givenName', 'familyName'], latinPaths)
	const hidden: readonly string[] = isWanted ? [] : latinPaths
	return allPersonPaths.filter((path) => !hidden.includes(path))
}
export const guardianPaths = (form: Form): readonly string[] =>
	allGuardianPaths.filter(
		(path) => path !== latinGuardian || wantsLatin(form, ['guardian.name'], [latinGuardian]),
	)

export const formOf = (player: Player): Form => Object.fromEntries(leavesOf(player, ''))
function leavesOf(part: object, before: string): [path: string, text: string][] {
	return Object.entries(part).flatMap(([key, value]): [string, string][] => {
		const path = `${before}${key}`
		return value !== null && typeof value === 'object'
			? leavesOf(value, `${path}.`)
			: [[path, isLanguage(path) ? languageEntry(String(value)) : String(value ?? '')]]
	})
}
/** Texts by their paths as the groups of the visit file; what is empty is left out. */
function groupsOf(form: Form): Record<string, unknown> {
	const whole: Record<string, unknown> = {}
	for (const path of paths) {
		const typed = form[path]?.trim()
		if (!typed) continue
		const text = isLanguage(path) ? (languageTyped(typed) ?? typed) : typed
		const [key = '', inner] = path.split('.')
		if (inner === undefined) whole[key] = text
		else whole[key] = { ...(whole[key] as object | undefined), [inner]: text }
	}
	return whole
}
/** What is wrong with a name, to go by at its field. */
function nameWords(title: string, { code, params }: Problem): string {
	if (code === 'not-in-a-name') return `${title} holds ${params.sign}. Take it out.`
	return params.isSpelt
		? `Kept as it is. No page can print ${params.letters} letters: write it in Latin letters too.`
		: `No page can print ${params.letters} letters. Write it in Latin letters.`
}
const isDay = (text: string): boolean => /^\d{4}-\d\d-\d\d$/.test(text)
function birthWords(form: Form, today: string): string | undefined {
	const born = form.birthDate ?? ''
	const fault = isDay(born) ? birthFault(born, today) : undefined
	if (fault === undefined) return undefined
	const said = `${titleOf('birthDate')} ${dayInWords(born)}`
	return fault === 'still-to-come'
		? `${said} is still to come. Check the year.`
		: `${said} is more than ${mostYears} years ago. Check the year.`
}
function languageWords(form: Form): Record<string, string> {
	const unknown = paths.filter(
		(path) => isLanguage(path) && isFilled(form, path) && !languageTyped(form[path] ?? ''),
	)
	return Object.fromEntries(
		unknown.map((path) => [
			path,
			`${titleOf(path)} ${form[path]?.trim()} is not on the list. Choose one of the list, or write ` +
				'its code of ISO 639 such as ar.',
		]),
	)
}
/** What cannot stand as it is typed now, by field: told at once. @param today YYYY-MM-DD */
export function entryProblems(form: Form, today: string): Record<string, string> {
	const names = nameProblemsIn((path) => tidyName(form[path] ?? ''))
	const birth = birthWords(form, today)
	return {
		...Object.fromEntries(
			names.map((problem) => {
				const path = problem.path.replace(/^player\./, '')
				return [path, nameWords(titleOf(path), problem)]
			}),
		),
		...(birth !== undefined && { birthDate: birth }),
		...languageWords(form),
	}
}
/** Questions about what can stand, by field. */
export function entryQuestions(form: Form, today: string): Record<string, string> {
	const born = form.birthDate ?? ''
	const years = isDay(born) && born <= today ? unusualAge(born, today) : undefined
	return years === undefined
		? {}
		: { birthDate: `${years} ${years === 1 ? 'year' : 'years'} old. Check the year.` }
}
/**
 * Reads the form; empty fields are left out.
 * @param today YYYY-MM-DD, to refuse a birth date that cannot be
 */
export function readForm(
	form: Form,
	today: string,
): { player: Player | undefined; problems: Record<string, string> } {
	const read = playerSchema.safeParse(groupsOf(form))
	const problems: Record<string, string> = {}
	for (const issue of read.error?.issues ?? []) {
		const path = issue.path.join('.')
		problems[path] ??= issueWords(titleOf(path), form[path] ?? '', issue)
	}
	return { player: read.data, problems: { ...problems, ...entryProblems(form, today) } }
}
