/** What the store writes about itself. */
import { z } from 'zod'

/** Binds the records of the first form, which bound neither time nor place: id and digest of each. */
export const anchorRecordSchema = z.strictObject({
	records: z.array(z.tuple([z.string(), z.string()])),
})
/** A place that writes records, with the key that its records are signed by. */
export const installationRecordSchema = z.strictObject({
	/** 12 hex */
	origin: z.string().regex(/^[0-9a-f]{12}$/, '12 hex digits'),
	/** Ed25519, base64 of the DER form */
	publicKey: z.string(),
	/** ISO 8601 */
	since: z.string(),
	what: z.enum(['set-up', 'upgrade', 'restore', 'copy', 'pack']),
})
