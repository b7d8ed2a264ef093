/** An entry that two people typed without knowing of each other: both are kept until one is chosen. */
import { z } from 'zod'

export const typedTwiceSchema = z.strictObject({
	/** the keys with dots between them, by which what is restricted is told */
	path: z.string().min(1).max(1000),
	/** where it stands in the draft; an item of a list by its name (`rows.ts`) */
	keys: z.array(z.string().max(200)).min(1).max(12),
	/** what does not stand, as JSON of the entry (`entries.ts`); `null` where it was taken out */
	is: z.string().min(1).max(60_000),
	/** who typed what does not stand, and when, ISO 8601 */
	by: z.string().max(160),
	at: z.string().max(40),
	standsBy: z.string().max(160),
	standsAt: z.string().max(40),
})
export type TypedTwice = z.infer<typeof typedTwiceSchema>
/** More is never typed twice before somebody settles it. */
export const mostTypedTwice = 60
