/** The counts of a merge, shown and kept, and what becomes of each record that comes. */
import { z } from 'zod'

/**
 * Why something is put aside and does not count: it has other content than the one of its id here,
 * it cannot be what it says, or it waits until this PC has a newer version.
 */
export const asideWhys = ['clash', 'refused', 'waits'] as const
export type AsideWhy = (typeof asideWhys)[number]
/** Taken in, there already, held back since it was destroyed here, or put aside. */
export type Outcome = 'added' | 'already' | 'heldBack' | AsideWhy

/**
 * What came in is what was added, already there, put aside (`quarantined`) or held back. Of what was
 * put aside `refused` cannot be what it says and `waits` is of a newer version; merges of program
 * 0.1.0 have neither.
 */
export const mergeCountsSchema = z.strictObject({
	in: z.number(),
	added: z.number(),
	already: z.number(),
	quarantined: z.number(),
	refused: z.number().optional(),
	waits: z.number().optional(),
	heldBack: z.number(),
	before: z.number(),
	after: z.number(),
})
export type MergeCounts = z.infer<typeof mergeCountsSchema>
