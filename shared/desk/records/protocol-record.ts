/** What a record of the kind 'protocol' holds: a version of the thresholds, by whom and why. */
import { z } from 'zod'
import { protocolSchema } from '../../engine/protocol/protocol.ts'
import { rows } from '../../engine/protocol/rows.ts'

export const protocolRecordSchema = z.strictObject({
	file: protocolSchema.extend({
		// a threshold that this version does not have cannot be worked by: it is left out by name
		values: z
			.record(
				z.string().refine((key) => Object.hasOwn(rows, key)),
				z.number(),
			)
			.optional(),
	}),
	why: z.string(),
	by: z.string(),
	at: z.string(),
})
