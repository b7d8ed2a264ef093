/**
 * What records hold of a screening day. Every entry is about one player, so that it travels and
 * ends with the player.
 */
import { z } from 'zod'
import { presences } from './board.ts'
import { stationIds } from './stations.ts'

const memberValue = z.strictObject({
	what: z.literal('member'),
	squadId: z.string(),
	team: z.string(),
	day: z.string(),
	playerId: z.string(),
	number: z.string(),
})
export type MemberValue = z.infer<typeof memberValue>
const markValue = z.strictObject({
	what: z.literal('mark'),
	squadId: z.string(),
	playerId: z.string(),
	presence: z.enum(presences),
	at: z.enum(stationIds).optional(),
	reason: z.string().optional(),
	time: z.string(),
})
export type MarkValue = z.infer<typeof markValue>
export const squadRecordSchema = z.discriminatedUnion('what', [memberValue, markValue])
