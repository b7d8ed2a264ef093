/** Speaking from the catalogue: a sentence by its key, its {names} filled in. */
import { sentences } from './en/documents.table.ts'

export { sentences as documentSentences } from './en/documents.table.ts'

type Key = keyof typeof sentences
/** The {names} that a sentence asks for. */
type Names<Sentence> = Sentence extends `${string}{${infer Name}}${infer Rest}`
	? Name | Names<Rest>
	: never
type Values<Name extends Key> = [Names<(typeof sentences)[Name]>] extends [never]
	? []
	: [Record<Names<(typeof sentences)[Name]>, string | number>]
/** Says the sentence of a key; what its {names} stand for has to be given. */
export type Speak = <Name extends Key>(key: Name, ...values: Values<Name>) => string
/** The {names} in a sentence, in order of the alphabet. @internal */
export const placeholdersOf = (sentence: string): string[] =>
	[...new Set([...sentence.matchAll(/\{([A-Za-z]*)\}/g)].map((found) => found[1] ?? ''))].sort()
/**
 * The sentence of a key, in the clinic's own words where it set some. @throws RangeError naming a
 * placeholder that no value was given for
 */
export function speakFrom(own: Readonly<Record<string, string>> = {}): Speak {
	return (key, ...[values]) => {
		const given = (values ?? {}) as Record<string, string | number>
		return (own[key] ?? sentences[key]).replace(/\{([A-Za-z]*)\}/g, (whole, name: string) => {
			const value = given[name]
			if (value === undefined)
				throw new RangeError(
					`texts.${key}: ${whole} cannot be filled in, allowed: ${
						placeholdersOf(sentences[key])
							.map((placeholder) => `{${placeholder}}`)
							.join(', ') || 'no placeholder'
					}`,
				)
			return String(value)
		})
	}
}
/** What is wrong with a clinic's own texts: one line each, empty where they can stand. */
export function textProblems(own: Readonly<Record<string, string>>): string[] {
	return Object.entries(own).flatMap(([key, text]) => {
		if (!Object.hasOwn(sentences, key))
			return [
				`texts.${key}: no such text, given ${JSON.stringify(text)}, allowed: a key of the ` +
					'catalogue',
			]
		const allowed = placeholdersOf(sentences[key as Key])
		const names = placeholdersOf(text)
		const foreign = names.filter((name) => !allowed.includes(name))
		const lost = allowed.filter((name) => !names.includes(name))
		const list = allowed.map((name) => `{${name}}`).join(', ') || 'no placeholder'
		return [
			...(text.trim() === '' ? [`texts.${key}: empty, given nothing, allowed: a sentence`] : []),
			...foreign.map(
				(name) => `texts.${key}: unknown placeholder, given {${name}}, allowed: ${list}`,
			),
			...lost.map(
				(name) =>
					`texts.${key}: placeholder {${name}} is missing, given ${JSON.stringify(text)}, ` +
					`allowed: a sentence with ${list}`,
			),
			...(/[{}]/.test(text.replace(/\{[A-Za-z]*\}/g, ''))
				? [`texts.${key}: a single brace, given ${JSON.stringify(text)}, allowed: ${list}`]
				: []),
		]
	})
}
