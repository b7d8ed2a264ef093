/** The letter by which a pair is known to the player. */
import type { Pair } from '../../visit/visit.ts'

const alphabet: readonly string[] = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ']
/**
 * Letters as recorded, then those of an earlier plan, so that a new pair never renames the others;
 * the rest in the order given.
 */
export function lettersOf(
	pairs: readonly Pick<Pair, 'id' | 'letter'>[],
	before: readonly { id: string; letter: string }[] = [],
): Map<string, string> {
	const given = new Map(
		pairs.flatMap((pair) => (pair.letter === undefined ? [] : [[pair.id, pair.letter] as const])),
	)
	const isTaken = (letter: string): boolean => [...given.values()].includes(letter)
	for (const { id, letter } of before)
		if (
			!given.has(id) &&
			alphabet.includes(letter) &&
			!isTaken(letter) &&
			pairs.some((pair) => pair.id === id)
		)
			given.set(id, letter)
	const free = alphabet.filter((letter) => !isTaken(letter))
	return new Map(pairs.map((pair) => [pair.id, given.get(pair.id) ?? free.shift() ?? '?']))
}
