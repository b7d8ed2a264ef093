import type { Fit } from '../../../shared/engine/onfoot/fit.ts'

/** What becomes of a new pair, in words of the screen. */
export const fitWords: Readonly<Record<Fit, string>> = {
	wear: 'New pair: wear it in',
	'wear-changed': 'New pair: wear it in with a change',
	'not-yet': 'New pair: not to be worn yet, something is held',
	'take-back': 'New pair: take it back',
}
