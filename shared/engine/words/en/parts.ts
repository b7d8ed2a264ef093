/** Statements that stand inside another one: a pair's signs, a shelf's reasons. */
import type { Audience, Params, Sentence } from '../sentence.ts'

/** A code and its parameters, as they stand in the parameters of the whole. */
export interface Part {
	code: string
	params: Params
}
/**
 * The sentences of the parts for one reader, in their order; those without words for the reader are
 * left out, and a part of another version too. @param table sentences by code, of any parameters
 */
export function spokenParts(table: object, parts: readonly Part[], reader: Audience): string[] {
	const sentences = table as Readonly<Record<string, Sentence<Params>>>
	return parts.flatMap(({ code, params }) => {
		const words = Object.hasOwn(sentences, code) ? sentences[code] : undefined
		const speak = reader === 'guardian' ? (words?.guardian ?? words?.player) : words?.[reader]
		return speak ? [speak(params)] : []
	})
}
