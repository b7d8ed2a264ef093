/** Names as the search and the warning of twins compare them. */
import type { Card } from '../../shared/contract.ts'

const ligatures: Record<string, string> = { ø: 'o', đ: 'd', ł: 'l', æ: 'ae', œ: 'oe', ß: 'ss', ı: 'i', þ: 'th', ð: 'd' }
/** Lower case without accents, so that 'zoe nguyen' finds Zoë Nguyễn. */
export function plain(text: string): string {
	const lower = text.toLowerCase()
	// biome-ignore lint/suspicious/noControlCharactersInRegex: plain ASCII needs no folding, and most names are
	if (/^[\x00-\x7f]*$/.test(lower)) return lower
	return lower.normalize('NFD').replace(/\p{M}/gu, '').replace(/[øđłæœßıþð]/g, (one) => ligatures[one] ?? one)
}
export const words = (text: string) => plain(text).split(/[\s,;'’-]+/).filter(Boolean)
export function wordsOfPlayer(card: Pick<Card, 'givenName' | 'familyName' | 'club' | 'birthDate'>): string[] {
	return [...new Set([...words(`${card.givenName} ${card.familyName} ${card.club ?? ''}`), ...plain(`${card.givenName} ${card.familyName}`).split(/\s+/), card.birthDate])]
}
/** At most one letter added, left out, changed, or two neighbours swapped. */
export function nearlySame(a: string, b: string): boolean {
	if (a === b) return true
	if (Math.abs(a.length - b.length) > 1 || Math.min(a.length, b.length) < 4) return false
	let start = 0
	while (start < a.length && start < b.length && a[start] === b[start]) start++
	let end = 0
	while (end < a.length - start && end < b.length - start && a.at(-1 - end) === b.at(-1 - end)) end++
	const [x, y] = [a.slice(start, a.length - end), b.slice(start, b.length - end)]
	return (x.length <= 1 && y.length <= 1) || (x.length === 2 && x[0] === y[1] && x[1] === y[0])
}
/** Why two players may be one person, or twins; undefined where nothing speaks for it. */
export function likeness(a: Card, b: Card): 'same-person' | 'twin' | undefined {
	const [familyA, familyB, givenA, givenB] = [plain(a.familyName), plain(b.familyName), plain(a.givenName), plain(b.givenName)]
	const family = nearlySame(familyA, familyB)
	const given = nearlySame(givenA, givenB)
	const swapped = nearlySame(familyA, givenB) && nearlySame(givenA, familyB)
	if (a.birthDate === b.birthDate) return (family && given) || swapped ? 'same-person' : familyA === familyB ? 'twin' : givenA === givenB ? 'same-person' : undefined
	return familyA === familyB && givenA === givenB ? 'same-person' : undefined
}
