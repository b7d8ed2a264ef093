/**
 * Finding to element, one row each: amount, range, where it may go, and what speaks against it.
 * Never for shape alone: a symptom or a measured limit is asked for.
 */
import { forefootRows } from './forefoot.ts'
import { heelAndCoverRows } from './heel-and-cover.ts'
import { rearfootRows } from './rearfoot.ts'
import type { ElementRow } from './row.ts'

/** Every row once, in the order in which elements are told. */
export const elementRows: readonly ElementRow[] = [
	...rearfootRows,
	...forefootRows,
	...heelAndCoverRows,
]
