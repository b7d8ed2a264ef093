/** Names as the search and the warning of twins compare them. */

import type { Card } from '../../../shared/contract.ts'
import { oneLetterOff } from '../../../shared/desk/outbox/addresses.ts'
import type { Player } from '../../../shared/engine/visit/visit.ts'
import { fullName } from '../../../shared/engine/words/names.ts'

const ligatures: Record<string, string> = {
	ø: 'o',
	đ: 'd',
	ł: 'l',
	æ: 'ae',
	œ: 'oe',
	ß: 'ss',
	ı: 'i',
	þ: 'th',
	ð: 'd',
}
/** Lower case without accents, so that 'zoe nguyen' finds Zoë Nguyễn. */
export function plain(text: string): string {
	const lower = text.toLowerCase()
	// biome-ignore lint/suspicious/noControlCharactersInRegex: plain ASCII needs no folding, and most names are
	if (/^[\x00-\x7f]*$/.test(lower)) return lower
	return lower
		.normalize('NFD')
		.replace(/\p{M}/gu, '')
		.replace(/[øđłæœßıþð]/g, (letter) => ligatures[letter] ?? letter)
}
export const words = (text: string) =>
	plain(text)
		.split(/[\s,;'’-]+/)
		.filter(Boolean)
type Named = Pick<Card, 'givenName' | 'familyName' | 'latinName'>
/** The name and its spelling for paper, where it has one. */
const spellingsOf = ({ givenName, familyName, latinName }: Named) => [
	{ givenName, familyName },
	...(latinName ? [latinName] : []),
]
/** Everything a player is looked for by: names, club, birth date, guardian, addresses, numbers. */
export function wordsOfPlayer(player: Player): string[] {
	const { club, birthDate, guardian, email, phone } = player
	const names = spellingsOf(player).map(fullName).join(' ')
	const besides = [club, email, guardian?.name, guardian?.latinName, guardian?.email]
	const all = [names, ...besides].filter((text) => text !== undefined && text !== null)
	const phones = [phone, guardian?.phone].map((number) => (number ?? '').replace(/\D/g, ''))
	return [
		...new Set([
			...words(all.join(' ')),
			...plain(all.join(' ')).split(/\s+/),
			...phones.filter(Boolean),
			birthDate,
		]),
	]
}
/**
 * Names shorter than this are compared as they are: among three letters one slip reaches too many
 * other names. A choice of this program.
 */
const leastLetters = 4
/**
 * The same name, or one of at least 4 letters with one typed mistake: a letter missing, extra or
 * changed, or two neighbours swapped.
 * @internal
 */
export const nearlySame = (left: string, right: string): boolean =>
	left === right ||
	(Math.max(left.length, right.length) >= leastLetters && oneLetterOff(left, right))
/**
 * Why two players may be one person, or twins; undefined where nothing speaks for it. Born on the
 * same day, names that differ by a slip or stand the other way round are one person's; a family
 * name alone makes twins. Born on different days both names must be the same.
 */
export function likeness(left: Likened, right: Likened): 'same-person' | 'twin' | undefined {
	const isSameDay = left.birthDate === right.birthDate
	const found = spellingsOf(left).flatMap((one) =>
		spellingsOf(right).map((other) => likeNames(one, other, isSameDay)),
	)
	return found.includes('same-person') ? 'same-person' : found.find((why) => why !== undefined)
}
type Likened = Named & Pick<Card, 'birthDate'>
type Spelling = Pick<Card, 'givenName' | 'familyName'>
function likeNames(left: Spelling, right: Spelling, isSameDay: boolean) {
	const [family, otherFamily] = [plain(left.familyName), plain(right.familyName)]
	const [given, otherGiven] = [plain(left.givenName), plain(right.givenName)]
	const sameFamily = family === otherFamily
	const sameGiven = given === otherGiven
	if (!isSameDay) return sameFamily && sameGiven ? 'same-person' : undefined
	const near = nearlySame(family, otherFamily) && nearlySame(given, otherGiven)
	const swapped = nearlySame(family, otherGiven) && nearlySame(given, otherFamily)
	if (near || swapped) return 'same-person'
	if (sameFamily) return 'twin'
	return sameGiven ? 'same-person' : undefined
}
