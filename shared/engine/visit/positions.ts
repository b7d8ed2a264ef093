/**
 * Which position of the list a typed text means. The visit keeps the text as it was typed; what the
 * list does not know says nothing.
 */
import { positions } from './positions.table.ts'
import { type Code, codes } from './terms.ts'

/** What a position asks of a boot; the table says what each role means. */
export type PositionRole = 'contest' | 'scrum' | 'speed' | 'kicking-support'
export interface Position {
	/** As the trade names it, with a capital. */
	name: string
	/** Other words for it. */
	synonyms: readonly string[]
	roles: readonly PositionRole[]
}
/** The positions of a code, in the order of the list. */
export const positionsIn = (code: Code): readonly Position[] => positions[code]

/** Spaces, hyphens, points, accents and capitals do not tell positions apart. */
const plain = (text: string): string =>
	text
		.normalize('NFKD')
		.toLowerCase()
		.replaceAll(/[^a-z0-9]/g, '')
const byCode = new Map(
	codes.map((code) => [
		code,
		new Map(
			positionsIn(code).flatMap((position) =>
				[position.name, ...position.synonyms].map((word) => [plain(word), position] as const),
			),
		),
	]),
)
/** Named alike in every code that knows the word: its roles are those it has in all of them. */
function inAnyCode(word: string): Position | undefined {
	const found = codes.flatMap((code) => byCode.get(code)?.get(word) ?? [])
	const [first, ...others] = found
	if (!first || others.some(({ name }) => name !== first.name)) return undefined
	return {
		...first,
		roles: first.roles.filter((role) => others.every(({ roles }) => roles.includes(role))),
	}
}
/**
 * The position that a word means in a code of play; undefined where the list does not know it. With
 * no code, only where every code that knows the word means a position of one name. @internal
 */
export function positionOf(typed: string, code: Code | undefined): Position | undefined {
	const word = plain(typed)
	return code === undefined ? inAnyCode(word) : byCode.get(code)?.get(word)
}
/** Several positions in one text are parted by these. */
const between = /[,;/+&]|\b(?:and|or)\b/i
/** The positions in a typed text, each once, in the order typed: 'lock / number 8' names two. */
export function positionsOf(typed: string, code: Code | undefined): Position[] {
	const found = [typed, ...typed.split(between)].flatMap((word) => positionOf(word, code) ?? [])
	return [...new Map(found.map((position) => [position.name, position])).values()]
}
