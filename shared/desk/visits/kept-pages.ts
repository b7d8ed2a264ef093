/** Pages that are kept with their bytes: those of a signed visit, and those that were given out. */
import { z } from 'zod'
import { keptDocumentSchema } from '../../engine/report/kept/form.ts'
import type { KindName } from '../../engine/report/kinds.ts'

/** A page of a signed visit, as the digest of the visit names it. */
export const signedPageSchema = z.strictObject({
	/** the name of a kind of document; a newer version may know more of them */
	kind: z.string(),
	/** of the bytes */
	sha256: z.string(),
	/** of the kept document that they were drawn from */
	documentSha256: z.string(),
})
export type SignedPage = z.infer<typeof signedPageSchema>

/** The kinds that are tried when a visit is signed: each is kept where it applies to the visit. */
export const kindsAtSigning = [
	'player',
	'appointment',
	'guardian',
	'referral',
	'insert-order',
	'season-chart',
] as const satisfies readonly KindName[]

/** A page as it was drawn, with the document it was drawn from. */
const page = {
	base64: z.string(),
	sha256: z.string(),
	fileName: z.string(),
	/** absent in version 0.1.0 */
	document: keptDocumentSchema.optional(),
}
const furtherPageSchema = z.strictObject({
	/** the name of a kind of document; a newer version may know more of them */
	kind: z.string(),
	...page,
	/** what a page of a season was made from */
	from: z.string().optional(),
})
export type FurtherPage = z.infer<typeof furtherPageSchema>
/**
 * The pages of a signed visit, the value of a record of the kind 'report': the player's report, and
 * besides it those that applied. Version 0.1.0 kept the bytes of the report alone.
 */
export const reportRecordSchema = z.strictObject({
	visitId: z.string(),
	...page,
	further: z.array(furtherPageSchema).optional(),
})
export type ReportValue = z.infer<typeof reportRecordSchema>

/** The pages that are given out without having been signed, besides the kinds of documents. */
export const pocketKind = 'season-pocket'
export type GivenKind = KindName | typeof pocketKind

/**
 * A page that was made for somebody, or given out: the value of a record of the kind 'document'.
 */
export const documentRecordSchema = z.strictObject({
	documentId: z.string(),
	/** absent: of no single visit */
	visitId: z.string().optional(),
	/** absent: of a squad */
	playerId: z.string().optional(),
	/** the name of a kind of document */
	kind: z.string(),
	/** of the visit, or of the plan that it was made from */
	version: z.number(),
	sha256: z.string(),
	base64: z.string(),
	/** the document as it is kept; absent where only the bytes of a 0.1.0 report were there */
	document: keptDocumentSchema.optional(),
	/** what it was made from, besides the visit: the same page is not made a second time */
	from: z.string().optional(),
	/** the screening day it is about */
	squadId: z.string().optional(),
	recipientId: z.string(),
	at: z.string(),
	by: z.string(),
})
export type DocumentValue = z.infer<typeof documentRecordSchema>
