/** Trade words that must stand on a player's page, explained at its end. */
import type { Speak } from '../words/speak.ts'
import { capital, glossary } from '../words/words.ts'
import { small } from './base.ts'
import type { Block } from './document.ts'
import { textsIn } from './texts.ts'

interface Explained {
	/** As it stands in the glossary. */
	term: string
	words: string
	stands: RegExp
}
const terms: readonly Explained[] = glossary.flatMap(({ term, player }) =>
	player
		? [
				{
					term,
					words: player.words,
					stands: new RegExp(`(?<![\\p{L}-])(${player.forms.join('|')})(?![\\p{L}-])`, 'iu'),
				},
			]
		: [],
)
/** What stands in a picture's place for those who do not see it is no place on the page. */
const unseen: ReadonlySet<string> = new Set(['kind', 'svg', 'alternative'])
/** What a person reads of a block, but not who signed it. */
const readIn = (block: Block): string =>
	block.kind === 'signature' ? '' : textsIn(block, unseen).join('\n')

/** What the trade words of a text mean that were not met before. */
function meaningsIn(text: string, met: Set<string>, t: Speak): string[] {
	return terms.flatMap(({ term, words, stands }) => {
		if (met.has(term) || !stands.test(text)) return []
		met.add(term)
		return [t('player.means', { term: capital(term), words })]
	})
}
/**
 * The blocks, with what their trade words mean under them all.
 * @param met words that were explained on an earlier page
 */
export function explainedAtEnd(
	blocks: readonly Block[],
	t: Speak,
	met: Set<string> = new Set(),
): Block[] {
	const meanings = meaningsIn(blocks.map(readIn).join('\n'), met, t)
	return meanings.length === 0 ? [...blocks] : [...blocks, small(meanings.join(' '))]
}
