/** What becomes of a new pair, in words of the screen. Pure. */
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import { type Fit, fitOfPair } from '../../../shared/engine/onfoot/fit.ts'
import type { Pair, Visit } from '../../../shared/engine/visit/visit.ts'

const fitWords: Readonly<Record<Fit, string>> = {
	wear: 'New pair: wear it in',
	'wear-changed': 'New pair: wear it in with a change',
	'not-yet': 'New pair: not to be worn yet, something is held',
	'take-back': 'New pair: take it back',
}
/** As it is proposed; '' for a pair that was there before, or was not tried on. */
export function fitShown(
	{ prescription }: Pick<Assessment, 'prescription'>,
	visit: Visit,
	pair: Pair,
) {
	const owned = prescription.owned.find(({ id }) => id === pair.id)
	const fit = owned && fitOfPair(pair, visit, owned.verdict, prescription.gate)
	return fit === undefined ? '' : fitWords[fit]
}
