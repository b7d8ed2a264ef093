/** Lengths as a shop reads them. */
import type { Span } from '../../findings/assessment.ts'
import { shown } from '../../words/words.ts'

/**
 * An inside length in whole mm, rounded inwards: what lies between lies within the span. A span
 * under a millimetre keeps its halves.
 */
export function wholeInside({ min, max }: Pick<Span, 'min' | 'max'>): { min: string; max: string } {
	const least = Math.ceil(min)
	const most = Math.floor(max)
	return least <= most
		? { min: String(least), max: String(most) }
		: { min: shown(min), max: shown(max) }
}
