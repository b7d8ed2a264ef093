/** What is kept of a PIN: salted and stretched, never the PIN. */
import { z } from 'zod'

/**
 * Hex texts. Without `version` it is a digest of the first form, stretched by scrypt N = 2^14; with
 * version 2 its `cost` stands beside it. r = 8, p = 1, 32 bytes.
 */
export const pinDigestSchema = z.strictObject({
	version: z.literal(2).optional(),
	cost: z.int().min(2).optional(),
	salt: z.string().regex(/^[0-9a-f]+$/, 'hex'),
	hash: z.string().regex(/^[0-9a-f]{64}$/, '64 hex digits'),
})
export type PinDigest = z.infer<typeof pinDigestSchema>
