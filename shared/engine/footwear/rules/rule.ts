/** What a footwear rule is made of. */
import type { Because, Strength } from '../../protocol/basis.ts'
import { type Feature, type Surface, termWords } from '../../visit/terms.ts'
import type { Facts } from '../facts.ts'

/** When, what it says, what to seek and avoid, and on what basis. */
export interface FootwearRule {
	id: string
	/** Visit paths it reads: with none of them recorded it cannot apply. */
	needs: readonly string[]
	/** The reasons that make the rule apply; none: it does not. */
	when(facts: Facts): Because[]
	says: string
	seek: readonly Feature[]
	avoid: readonly Feature[]
	basis: {
		source: string
		strength: Strength
		threshold?: 'footwear.broadZ' | 'footwear.narrowZ' | 'footwear.heavyKg'
	}
}
/** The basis of a rule that no source was found for. */
export const practice = { source: 'common practice, no source', strength: 'practice' } as const
/** The same where even the trade only believes it. */
export const belief = {
	source: 'common practice, no source: belief, not trial evidence',
	strength: 'practice',
} as const
/** Those of the surfaces that the player plays on, as reasons. */
export const playedOn = (facts: Facts, ...surfaces: Surface[]): Because[] =>
	facts.surfaces
		.filter((surface) => surfaces.includes(surface))
		.map((surface) => ({ measure: 'Surface', value: termWords(surface) }))
