/** What a record of the kind 'protocol' holds: a version of the thresholds, by whom and why. */
import { z } from 'zod'
import { protocolSchema, refuseLimits } from '../../engine/protocol/protocol.ts'
import { isReadable, withCurrentKeys } from '../../engine/protocol/retired.ts'

export const protocolRecordSchema = z.strictObject({
	file: protocolSchema.extend({
		// a threshold that this version does not have cannot be worked by: it is left out by name
		values: z
			.record(z.string().refine(isReadable), z.number())
			// one beyond its limits cannot be worked with either: the version before it counts
			.superRefine(refuseLimits)
			.transform(withCurrentKeys)
			.optional(),
	}),
	why: z.string(),
	by: z.string(),
	at: z.string(),
})
