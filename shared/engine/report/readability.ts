/**
 * How hard a text is to read: a hint, never a gate. Formulas: Flesch-Kincaid grade, Flesch reading
 * ease, SMOG (McLaughlin 1969), as in the trade file on documents.
 */
import { type BlockKind, byKind, type ForEachKind, type LwDocument } from './document.ts'

interface Counts {
	words: number
	sentences: number
	syllables: number
	/** Words of three syllables or more. */
	long: number
}
/** Flesch-Kincaid grade level, US school grade. @internal */
export const fleschKincaid = ({ words, sentences, syllables }: Counts): number =>
	(0.39 * words) / sentences + (11.8 * syllables) / words - 15.59
/** Flesch reading ease, about 0 to 100; higher is easier. @internal */
export const fleschEase = ({ words, sentences, syllables }: Counts): number =>
	206.835 - (1.015 * words) / sentences - (84.6 * syllables) / words
/**
 * SMOG grade; two to four grades above Flesch-Kincaid on the same text, so the two are never mixed.
 * @internal
 */
export const smog = ({ long, sentences }: Counts): number =>
	3.1291 + 1.043 * Math.sqrt((long * 30) / sentences)
/**
 * Syllables of an English word by its groups of vowels; a silent last e is not counted. At least
 * one.
 * @internal
 */
export function syllablesOf(word: string): number {
	const plain = word.toLowerCase().replace(/[^a-z]/g, '')
	const groups = plain
		.replace(/(?:[^laeiouycgsxz]es|[^td]ed|[^laeiouy]e)$/, (end) => end.charAt(0))
		.match(/[aeiouy]+/g)
	return Math.max(1, groups?.length ?? 0)
}
/**
 * Counts of a text; undefined where it has no words. A text without a full stop is one sentence.
 * @internal
 */
export function countsOf(text: string): Counts | undefined {
	const words = text.replace(/\[\d+\]/g, ' ').match(/[\p{L}][\p{L}'-]*/gu) ?? []
	if (words.length === 0) return undefined
	const syllables = words.map(syllablesOf)
	return {
		words: words.length,
		sentences: Math.max(1, (text.match(/[.!?:](?=\s|$)/g) ?? []).length),
		syllables: syllables.reduce((sum, count) => sum + count, 0),
		long: syllables.filter((syllable) => syllable >= 3).length,
	}
}
const none = (): string[] => []
/** Sentences a person reads in a block; tables of numbers and captions are not prose. */
const proseOf: ForEachKind<BlockKind, [], string[]> = {
	heading: none,
	text: ({ tone, text }) => (tone === 'small' ? [] : [text]),
	list: ({ items }) => items,
	actions: ({ items }) => items.map((item) => item.what),
	alert: ({ text }) => [text],
	table: none,
	chart: none,
	figure: none,
	'true-size': none,
	signature: none,
}
interface Readability {
	grade: number
	ease: number
	smog: number
}
const ended = (line: string): string =>
	/[.!?:]$/.test(line.replace(/( ?\[\d+\])+$/, '')) ? line : `${line}.`
/** The gauge of a document's prose; undefined where it has none. */
export function readabilityOf(document: LwDocument): Readability | undefined {
	const prose = document.blocks.flatMap((block) => byKind(proseOf, block))
	const counts = countsOf(prose.map(ended).join(' '))
	return counts && { grade: fleschKincaid(counts), ease: fleschEase(counts), smog: smog(counts) }
}
