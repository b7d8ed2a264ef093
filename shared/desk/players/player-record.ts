/** What records hold of a player: the details, and who was merged into whom. */
import { z } from 'zod'
import { playerSchema } from '../../engine/visit/visit.ts'

export const playerRecordSchema = z.strictObject({ playerId: z.string(), player: playerSchema })
export type PlayerValue = z.infer<typeof playerRecordSchema>

export const mergeRecordSchema = z.strictObject({
	mergeId: z.string(),
	from: z.string(),
	into: z.string(),
	undone: z.boolean(),
	reason: z.string(),
})
export type MergeValue = z.infer<typeof mergeRecordSchema>
