/** The bases of a season's findings that rest on no threshold. */
import type { Basis } from '../protocol/basis.ts'

/** The basis of a rule that holds by how this program works. */
export const ownRule = (rule: string): Basis => ({
	rule,
	source: 'own rule of this program',
	strength: 'practice',
})
/** The basis of a rule that is common practice, with no source behind it. */
export const commonPractice = (rule: string): Basis => ({
	rule,
	source: 'common practice, no source',
	strength: 'practice',
})
