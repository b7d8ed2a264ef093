/** Features that no one shoe has both of; common sense, no source. */
import type { Feature } from '../visit/terms.ts'

export const opposites: readonly (readonly [Feature, Feature])[] = [
	['firm-heel-counter', 'soft-heel-counter'],
	['stiff-forefoot', 'flexible-forefoot'],
	['wide-fitting', 'narrow-fitting'],
	['raised-heel', 'low-heel'],
	['round-studs', 'bladed-studs'],
	['long-studs', 'short-studs'],
	['high-heel-counter', 'low-heel-collar'],
	['soft-ground-sole', 'artificial-ground-sole'],
	['indoor-sole', 'firm-ground-sole'],
	['low-mass', 'full-length-cushioning'],
]
