/** Where a word that is wider than its column is divided: by the patterns of English hyphenation. */
import english from 'hyphen/en-gb/index.js'

/** No text of a page has it. */
const mark = '\u0001'
const hyphen = '-'
/** Shorter words are wider than no column. */
const minWordLength = 6

/**
 * As much of a word as fits, with its hyphen, and the rest; undefined where it has no place to divide
 * it, or not even its first part fits. @param fits whether a text fits the line
 */
export function divided(
	word: string,
	fits: (text: string) => boolean,
): { head: string; rest: string } | undefined {
	const parts = english.hyphenateSync(word, { hyphenChar: mark, minWordLength }).split(mark)
	for (let count = parts.length - 1; count > 0; count--) {
		const head = `${parts.slice(0, count).join('')}${hyphen}`
		if (fits(head)) return { head, rest: parts.slice(count).join('') }
	}
	return undefined
}
