/**
 * Names in any script. A name is kept as its bearer writes it; where no font of the pages has its
 * letters, a spelling in Latin letters stands beside it, for paper. Signs that are no part of a name
 * are refused.
 */
import { unprintableIn } from '../plain/printable.ts'
import { type Problem, problemOf } from './problems.ts'
import type { Player } from './recorded/player.ts'
import { scriptNames } from './scripts.table.ts'

/** Emoji and other pictures, and what only a program reads; joiners belong to some scripts. */
const notInAName =
	/[\p{Extended_Pictographic}\p{Regional_Indicator}\p{Emoji_Modifier}\p{Cc}\p{Cs}\p{Co}\p{Zl}\p{Zp}]|\u{20e3}|\u{fe0f}|(?![\u200c\u200d])\p{Cf}/u
/** Marks of direction and breaking that a paste brings along; nobody sees them. */
const unseen = /[\u00ad\u200e\u200f\u202a-\u202e\u2060\u2066-\u2069\ufeff]/g
/** Line breaks and tabs of a paste. */
const blanks = /\s+/g

/** What is wrong with a name. `letters`: what the letters that no font has are called. */
type NameFault = { code: 'not-in-a-name'; sign: string } | { code: 'not-printed'; letters: string }

const codePoint = (character: string): string =>
	`U+${(character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')}`
/** What cannot be seen is told by its number alone. */
const signWords = (sign: string): string =>
	/\p{C}|\p{Z}|\ufe0f/u.test(sign)
		? `an unseen sign (${codePoint(sign)})`
		: `${sign} (${codePoint(sign)})`
function lettersOf(characters: readonly string[]): string {
	const all = characters.join('')
	return scriptNames.find(([, letters]) => letters.test(all))?.[0] ?? characters.join(' ')
}
/** The first thing that is wrong with a name; undefined where it can stand and be printed. @internal */
export function nameFault(name: string): NameFault | undefined {
	const [sign] = notInAName.exec(name) ?? []
	if (sign !== undefined) return { code: 'not-in-a-name', sign: signWords(sign) }
	const unprintable = unprintableIn(name)
	return unprintable.length > 0
		? { code: 'not-printed', letters: lettersOf(unprintable) }
		: undefined
}
/** Whether a name has letters of another script: then a spelling in Latin letters may stand beside. */
export const hasOtherLetters = (name: string): boolean => /(?!\p{Script=Latin})\p{L}/u.test(name)

/** A name as it is kept: composed, on one line, without what nobody sees. */
export const tidyName = (name: string): string =>
	name.normalize('NFC').replace(unseen, '').replace(blanks, ' ').trim()

/**
 * The names in a player's details, by path, each with what it is printed by instead. Where nothing
 * stands beside a name, it has to be written in letters that the pages have.
 */
const namesIn: readonly (readonly [path: string, latin?: string])[] = [
	['givenName', 'latinName.givenName'],
	['familyName', 'latinName.familyName'],
	['latinName.givenName'],
	['latinName.familyName'],
	['club'],
	['guardian.name', 'guardian.latinName'],
	['guardian.latinName'],
	['guardian.relation'],
]
/** What keeps names from being printed. @param at what stands at a path of the player; '' for nothing */
export const nameProblemsIn = (at: (path: string) => string): Problem[] =>
	namesIn.flatMap(([path, latin]) => {
		const name = at(path)
		const fault = nameFault(name)
		if (!fault) return []
		const where = `player.${path}`
		if (fault.code === 'not-in-a-name')
			return [problemOf(where, fault.code, name, { sign: fault.sign })]
		if (latin !== undefined && at(latin) !== '') return []
		const { letters } = fault
		return [problemOf(where, fault.code, name, { letters, isSpelt: latin !== undefined })]
	})
/** The same of other names that pages print as they are, by the path of their field. */
export const paperNameProblems = (names: Readonly<Record<string, string | undefined>>): Problem[] =>
	Object.entries(names).flatMap(([path, name = '']) => {
		const fault = nameFault(name)
		if (!fault) return []
		return fault.code === 'not-in-a-name'
			? [problemOf(path, fault.code, name, { sign: fault.sign })]
			: [problemOf(path, fault.code, name, { letters: fault.letters, isSpelt: false })]
	})
/** The same of a player's details. */
export const nameProblems = (player: Player): Problem[] =>
	nameProblemsIn((path) => {
		const value = path
			.split('.')
			.reduce<unknown>((part, key) => (part as Record<string, unknown> | undefined)?.[key], player)
		return typeof value === 'string' ? value : ''
	})
/** The same details with their names as they are kept. */
export function tidyPlayer(player: Player): Player {
	const { givenName, familyName, latinName, club, guardian } = player
	return {
		...player,
		givenName: tidyName(givenName),
		familyName: tidyName(familyName),
		...(latinName && {
			latinName: {
				givenName: tidyName(latinName.givenName),
				familyName: tidyName(latinName.familyName),
			},
		}),
		...(club !== undefined && { club: tidyName(club) }),
		...(guardian && {
			guardian: {
				...guardian,
				name: tidyName(guardian.name),
				...(guardian.latinName !== undefined && { latinName: tidyName(guardian.latinName) }),
				...(guardian.relation !== undefined && { relation: tidyName(guardian.relation) }),
			},
		}),
	}
}
