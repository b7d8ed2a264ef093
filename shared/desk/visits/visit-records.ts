/** What records hold of signed visits besides the visit and its pages: notes and sendings. */
import { z } from 'zod'

/** Words added to a visit afterwards, with their own author and time. */
export const visitNoteRecordSchema = z.strictObject({
	visitId: z.string(),
	what: z.enum(['in-error', 'late-entry', 'countersign', 'statement']),
	text: z.string(),
	by: z.string(),
	at: z.string(),
	version: z.number(),
	occurredOn: z.string().optional(),
})

/**
 * That a report or document left: by hand (with the digest of the report), or from the outbox (with
 * what was sent, to which address, by which way).
 */
export const sendingRecordSchema = z.strictObject({
	recipient: z.string(),
	channel: z.string(),
	version: z.number(),
	at: z.string(),
	visitId: z.string(),
	reportSha256: z.string().optional(),
	itemId: z.string().optional(),
	documentKind: z.string().optional(),
	documentSha256: z.string().optional(),
	recipientId: z.string().optional(),
	address: z.string().nullable().optional(),
	way: z.string().optional(),
	protection: z.string().optional(),
	personId: z.string().nullable().optional(),
	by: z.string().optional(),
	messageId: z.string().optional(),
	consentIds: z.array(z.string()).optional(),
})
