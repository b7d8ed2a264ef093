/** The counts of a merge, shown and kept. */
import { z } from 'zod'

/** What came in is what was added, already there, put aside or held back. */
export const mergeCountsSchema = z.strictObject({
	in: z.number(),
	added: z.number(),
	already: z.number(),
	quarantined: z.number(),
	heldBack: z.number(),
	before: z.number(),
	after: z.number(),
})
export type MergeCounts = z.infer<typeof mergeCountsSchema>
