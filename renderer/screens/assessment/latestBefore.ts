/** The visit whose figures stand beside what is measured now. Pure. */
import type { Visit } from '../../../shared/engine/visit/visit.ts'

/** The latest of some visits before a day (ISO date), in whatever order they come. */
export const latestBefore = (visits: readonly Visit[], day: string): Visit | undefined =>
	visits
		.filter((visit) => visit.visitDate < day)
		.toSorted((left, right) => (left.visitDate < right.visitDate ? 1 : -1))[0]
