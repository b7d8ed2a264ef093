/** What a record of the kind 'protocol' holds: a version of the thresholds, by whom and why. */
import { z } from 'zod'
import { protocolSchema } from '../../engine/protocol/protocol.ts'

/**
 * A threshold that this version does not have is left out by name; one beyond its limits makes the
 * whole version unreadable, as the rules could not work with it.
 */
export const protocolRecordSchema = z.strictObject({
	file: protocolSchema,
	why: z.string(),
	by: z.string(),
	at: z.string(),
})
