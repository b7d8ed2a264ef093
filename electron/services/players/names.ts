/** Names as the search and the warning of twins compare them. */
import type { Card } from '../../../shared/contract.ts'
import { oneLetterOff } from '../../../shared/desk/outbox/addresses.ts'

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
		.replace(/[øđłæœßıþð]/g, (one) => ligatures[one] ?? one)
}
export const words = (text: string) =>
	plain(text)
		.split(/[\s,;'’-]+/)
		.filter(Boolean)
export function wordsOfPlayer(
	card: Pick<Card, 'givenName' | 'familyName' | 'club' | 'birthDate'>,
): string[] {
	return [
		...new Set([
			...words(`${card.givenName} ${card.familyName} ${card.club ?? ''}`),
			...plain(`${card.givenName} ${card.familyName}`).split(/\s+/),
			card.birthDate,
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
 */
export const nearlySame = (a: string, b: string): boolean =>
	a === b || (Math.max(a.length, b.length) >= leastLetters && oneLetterOff(a, b))
/** Why two players may be one person, or twins; undefined where nothing speaks for it. */
export function likeness(a: Card, b: Card): 'same-person' | 'twin' | undefined {
	const [familyA, familyB, givenA, givenB] = [
		plain(a.familyName),
		plain(b.familyName),
		plain(a.givenName),
		plain(b.givenName),
	]
	const family = nearlySame(familyA, familyB)
	const given = nearlySame(givenA, givenB)
	const swapped = nearlySame(familyA, givenB) && nearlySame(givenA, familyB)
	if (a.birthDate === b.birthDate)
		return (family && given) || swapped
			? 'same-person'
			: familyA === familyB
				? 'twin'
				: givenA === givenB
					? 'same-person'
					: undefined
	return familyA === familyB && givenA === givenB ? 'same-person' : undefined
}
/** A player's name as it is shown and printed. */
export const fullName = ({ givenName, familyName }: Pick<Card, 'givenName' | 'familyName'>) =>
	`${givenName} ${familyName}`
