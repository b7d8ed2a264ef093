/** The features that no shoe has together with one. */
import type { Feature } from '../visit/terms.ts'
import { opposites } from './opposites.table.ts'

export const oppositesOf = (feature: Feature): Feature[] =>
	opposites.flatMap(([first, second]) => {
		if (first === feature) return [second]
		return second === feature ? [first] : []
	})
