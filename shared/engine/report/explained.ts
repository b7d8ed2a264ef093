/** Trade words that must stand on a player's page, explained where they first stand. */
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

/**
 * The blocks, each followed by what its trade words mean where they were not met before; after a
 * heading comes what it heads first.
 */
export function explained(blocks: readonly Block[], t: Speak): Block[] {
	const met = new Set<string>()
	let owed: string[] = []
	return blocks.flatMap((block, place) => {
		const text = readIn(block)
		for (const { term, words, stands } of terms) {
			if (met.has(term) || !stands.test(text)) continue
			met.add(term)
			owed.push(t('player.means', { term: capital(term), words }))
		}
		if (owed.length === 0 || (block.kind === 'heading' && place < blocks.length - 1)) return [block]
		const meanings = small(owed.join(' '))
		owed = []
		return [block, meanings]
	})
}
