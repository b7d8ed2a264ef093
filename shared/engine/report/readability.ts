/**
 * How hard a text is to read: a hint, never a gate. Formulas: Flesch-Kincaid grade (Kincaid et al.
 * 1975), Flesch reading ease (Flesch 1948), SMOG (McLaughlin 1969), coefficients from memory.
 * Everything a person reads counts: headings, tables, captions and small print too. A piece of
 * fewer than four words is a label: its syllables count, but it is no short sentence that would make
 * long ones look shorter.
 */
import {
	type BlockKind,
	blocksIn,
	byKind,
	cellTexts,
	type ForEachKind,
	type LwDocument,
} from './document.ts'

interface Counts {
	words: number
	/** Words that stand in a sentence, not in a label. */
	inSentences: number
	sentences: number
	syllables: number
	/** Words of three syllables or more. */
	long: number
}
/** Flesch-Kincaid grade level, US school grade. @internal */
export const fleschKincaid = ({ words, inSentences, sentences, syllables }: Counts): number =>
	(0.39 * inSentences) / sentences + (11.8 * syllables) / words - 15.59
/** Flesch reading ease, about 0 to 100; higher is easier. @internal */
export const fleschEase = ({ words, inSentences, sentences, syllables }: Counts): number =>
	206.835 - (1.015 * inSentences) / sentences - (84.6 * syllables) / words
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
	const plain = word
		.normalize('NFD')
		.toLowerCase()
		.replace(/[^a-z]/g, '')
	const groups = plain
		.replace(/(?:[^laeiouycgsxz]es|[^td]ed|[^laeiouy]e)$/, (end) => end.charAt(0))
		.match(/[aeiouy]+/g)
	return Math.max(1, groups?.length ?? 0)
}
/** From this many words on a piece is a sentence, with or without a full stop. */
const leastOfSentence = 4
/** Ends of sentences, and of the items of a list that stands in one piece. */
const ends = /[.!?;](?=[\s)]|$)/g
const wordsIn = (text: string): string[] =>
	(text.replace(/\[\d+\]/g, ' ').match(/\p{L}[\p{L}'\u2019-]*/gu) ?? []).filter((word) =>
		// 'mm' is a sign, not a word
		/[aeiouy]/i.test(word.normalize('NFD')),
	)
/**
 * Counts of pieces of text that stand apart (a paragraph, an item, a cell); undefined where they
 * have no words.
 * @internal
 */
export function countsOf(...pieces: readonly string[]): Counts | undefined {
	const counts: Counts = { words: 0, inSentences: 0, sentences: 0, syllables: 0, long: 0 }
	for (const piece of pieces) {
		const words = wordsIn(piece)
		const syllables = words.map(syllablesOf)
		counts.words += words.length
		counts.syllables += syllables.reduce((sum, count) => sum + count, 0)
		counts.long += syllables.filter((syllable) => syllable >= 3).length
		if (words.length < leastOfSentence) continue
		const closed = piece.trim().replace(/( ?\[\d+\])+$/, '')
		const open = /[.!?;]$/.test(closed) ? 0 : 1
		counts.inSentences += words.length
		counts.sentences += (closed.match(ends)?.length ?? 0) + open
	}
	if (counts.words === 0) return undefined
	return counts.sentences > 0 ? counts : { ...counts, inSentences: counts.words, sentences: 1 }
}
/** What a person reads of a block, piece by piece. */
const piecesOf: ForEachKind<Exclude<BlockKind, 'beside'>, [], string[]> = {
	heading: ({ text }) => [text],
	text: ({ text }) => [text],
	list: ({ items }) => items,
	actions: ({ items }) => items.flatMap(({ what, when, who }) => [what, when, who]),
	alert: ({ title, text }) => [title, text],
	facts: ({ title = '', rows }) => [title, ...rows.flatMap(({ label, text }) => [label, text])],
	table: ({ caption, head, rows }) => [caption, ...head, ...rows.flat()],
	chart: ({ caption, head, rows }) => [caption, ...head, ...rows.flat().flatMap(cellTexts)],
	figure: ({ caption }) => [caption],
	'true-size': ({ caption }) => [caption],
	// names and numbers
	signature: () => [],
}
interface Readability {
	grade: number
	ease: number
	smog: number
}
/**
 * The gauge of what a document says, but for names, dates and numbered sources; undefined where it
 * says nothing.
 */
export function readabilityOf(document: LwDocument): Readability | undefined {
	const counts = countsOf(
		document.title,
		...blocksIn(document.blocks).flatMap((block) => byKind(piecesOf, block)),
		document.footer,
	)
	return counts && { grade: fleschKincaid(counts), ease: fleschEase(counts), smog: smog(counts) }
}
