/**
 * Does a document speak of somebody else? Whole names of other people on record, looked for in its
 * words.
 */
import { folded } from '../../engine/plain/folded.ts'

export interface Named {
	/** given and family name, or the name as it was entered */
	name: string
	/** who that is, in words */
	as: string
}

const wordsOf = (text: string): string[] => folded(text).match(/[\p{L}\p{N}]+/gu) ?? []
/**
 * A name of one word alone stands in too many sentences: it is not looked for. A choice of this
 * program.
 */
const leastWords = 2
/**
 * People whose whole name stands in a text, in either order of given and family name, without
 * regard to accents, capitals and punctuation.
 * It does not find a person by one name alone, by a nickname or by a description.
 * @param texts what is read, one after another; a name does not run over from one to the next
 * @param own names that belong there: the player's, those on the player's record, the clinic's
 * people
 */
export function othersNamed(
	texts: readonly string[],
	people: readonly Named[],
	own: readonly string[],
): Named[] {
	const lines = texts.map((text) => ` ${wordsOf(text).join(' ')} `)
	const known = new Set(lines.flatMap((line) => line.split(' ')))
	const orders = (name: string): string[] => {
		const words = wordsOf(name)
		return words.length < leastWords
			? []
			: [
					words,
					[...words.slice(-1), ...words.slice(0, -1)],
					[...words.slice(1), ...words.slice(0, 1)],
				].map((order) => order.join(' '))
	}
	const fits = new Set(own.flatMap(orders))
	const found = new Map<string, Named>()
	for (const person of people) {
		const words = wordsOf(person.name)
		if (words.length < leastWords || !words.every((word) => known.has(word))) continue
		const written = orders(person.name)
		if (written.some((order) => fits.has(order)) || found.has(words.join(' '))) continue
		if (written.some((order) => lines.some((line) => line.includes(` ${order} `))))
			found.set(words.join(' '), person)
	}
	return [...found.values()]
}
