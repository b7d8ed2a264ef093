/** How sure the UK half-size label is, from measuring error alone. */
import type { SizeLabel, SizingResult } from '../findings/assessment.ts'
import { below } from '../plain/normal.ts'
import { lastChildSize, mmPerInchSize, wrapSizes } from './sizes.ts'

/** A label stands for a quarter of a size either way, in sizes. */
export const labelHalfWidth = 0.25
/**
 * Probability that the label is right, and the likelier of its two neighbours with its probability.
 * @param uk the UK label; @param sem standard error of the length to fit, mm
 * @returns probabilities 0 to 1; of two neighbours equally likely the larger size is named
 */
export function labelConfidence(
	uk: SizeLabel,
	sem: number,
): Required<Pick<SizingResult, 'sizeConfidence' | 'nextSize'>> {
	// On one running scale, so that 1 adult follows 13.5 child.
	const run = uk.scale === 'child' ? 0 : wrapSizes
	const probability = (label: number): number => {
		const z = (edge: number) => ((label + edge - (uk.exact + run)) * mmPerInchSize) / sem
		return Math.min(1, Math.max(0, below(z(labelHalfWidth)) - below(z(-labelHalfWidth))))
	}
	const here = uk.label + run
	const [smaller, larger] = [here - 0.5, here + 0.5]
	const next = probability(smaller) > probability(larger) + 1e-12 ? smaller : larger
	const child = next <= lastChildSize
	return {
		sizeConfidence: probability(here),
		nextSize: {
			system: 'uk',
			label: child ? next : next - wrapSizes,
			scale: child ? 'child' : 'adult',
			probability: probability(next),
		},
	}
}
