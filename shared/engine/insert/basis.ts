/** The basis of what no source was found for. */
import type { Basis } from '../protocol/basis.ts'

/** The basis of a rule of the trade. */
export const practiceBasis = (rule: string): Basis => ({
	rule,
	source: 'common practice, no source',
	strength: 'practice',
})
