/** What records hold of signed visits besides the visit: reports, notes, documents, sendings. */
import { z } from 'zod'
import type { LwDocument } from '../../engine/report/document.ts'
import { outboxKinds } from '../outbox/item.ts'

/** The report of a version, as its bytes. */
export const reportRecordSchema = z.strictObject({
	visitId: z.string(),
	base64: z.string(),
	sha256: z.string(),
	fileName: z.string(),
})

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

/** A document made for the outbox, with its bytes and digest. */
export const documentRecordSchema = z.strictObject({
	documentId: z.string(),
	visitId: z.string(),
	playerId: z.string(),
	kind: z.enum(outboxKinds),
	version: z.number(),
	sha256: z.string(),
	base64: z.string(),
	/**
	 * the pages as data, for a copy under a password; absent where they cannot be drawn again byte by
	 * byte
	 */
	layout: z.custom<LwDocument>((value) => typeof value === 'object' && value !== null).optional(),
	recipientId: z.string(),
	at: z.string(),
	by: z.string(),
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
