/** What a newer version wrote, as words: nothing of it is dropped in silence. */
import { type Speak, speakFrom } from '../../words/speak.ts'
import type { Block } from '../document.ts'
import { textsIn } from '../texts.ts'

/** Fields that hold how something looks, not what it says. */
const looks: ReadonlySet<string> = new Set([
	...['svg', 'logo', 'base64', 'id', 'kind', 'tone', 'pattern', 'colour', 'mediaType'],
	...['sha256', 'widths', 'style', 'align'],
])
const isWords = (text: string): boolean => /\p{L}|\p{N}/u.test(text) && !/^\s*<[a-z!?]/i.test(text)

/** The words in a part of a document, in their order. */
export const wordsIn = (part: unknown): string[] => textsIn(part, looks).filter(isWords)

/** The words of a part that is not known, under a line that says so. */
export function foreignBlocks(words: readonly string[], t: Speak = speakFrom()): Block[] {
	return [
		{ kind: 'text', tone: 'small', text: t('kept.newerPart') },
		...(words.length > 0 ? [{ kind: 'list' as const, items: [...words] }] : []),
	]
}
/** Words of a part that stand in `whole` and not in what of it was read. */
export function wordsLost(whole: unknown, read: unknown): string[] {
	const known = wordsIn(read)
	return wordsIn(whole).filter((words) => {
		const at = known.indexOf(words)
		if (at >= 0) known.splice(at, 1)
		return at < 0
	})
}
