import { z } from 'zod'
import { protocolSchema } from '../../../shared/engine/protocol/protocol.ts'

/** What a record of the kind 'protocol' holds. */
export const protocolRecordSchema = z.strictObject({
	file: protocolSchema,
	why: z.string(),
	by: z.string(),
	at: z.string(),
})
export type ProtocolRecord = z.infer<typeof protocolRecordSchema>
