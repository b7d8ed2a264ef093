/** The agreement that a signature needs, of any player: told and agreed together with a guardian. */
import { usualAgreement } from '../shared/engine/visit/agreement.ts'
import type { Decisions } from '../shared/engine/visit/decisions.ts'

const agreement = usualAgreement({ guardian: { name: 'Rae Ashdown' } }, true)
if (!agreement) throw new Error('a guardian is named, so there are usual answers')
export const agreed: Required<Pick<Decisions, 'agreement'>> = { agreement }
/** What is said by hand before signing, and settles no question. */
export const saidByHand: readonly string[] = [
	'signing.condition-without-status',
	'signing.language-open',
]
