/** What a document looks like where it is kept. */
import { z } from 'zod'
import type { LwDocument } from '../document.ts'
import { documentSteps } from './steps.table.ts'

/** The version of the form that this program writes: one more than the steps that lead to it. */
export const documentVersion = documentSteps.length + 1

/**
 * A document with the version of its form. What stands in `content` is read by read.ts alone: it
 * may be of an older or a newer version.
 */
export const keptDocumentSchema = z.strictObject({
	version: z.int().min(1),
	content: z.record(z.string(), z.unknown()),
})
export type KeptDocument = z.infer<typeof keptDocumentSchema>

export type Logo = NonNullable<LwDocument['letterhead']['logo']>
/** A logo where the letterhead names it by its digest. */
export const logoRefSchema = z.object({ sha256: z.string() })
