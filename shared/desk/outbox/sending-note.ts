import { z } from 'zod'

/**
 * Something to know before anything of this player is sent: a court order, an address that must not
 * be told (practice standard 1.4, common practice, no source).
 */
export const sendingNoteSchema = z.strictObject({
	noteId: z.string(),
	playerId: z.string(),
	text: z.string(),
	by: z.string(),
	at: z.string(),
	removed: z.strictObject({ by: z.string(), at: z.string(), reason: z.string() }).optional(),
})
export type SendingNote = z.infer<typeof sendingNoteSchema>
