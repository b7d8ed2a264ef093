/** Shapes that the calls of several rooms share. */
import { z } from 'zod'
import { leastPassphrase } from './passphrase.ts'

export const id = z.string().min(1).max(80)
export const pdf = z.strictObject({ base64: z.string(), sha256: z.string(), fileName: z.string() })
/** A document as one page for a screen reader, with its style sheet in it. */
export const page = z.strictObject({ html: z.string(), fileName: z.string() })
export const nothing = z.strictObject({})
export const reason = z.string().trim().min(3).max(500)
export const secret = z.string().min(leastPassphrase).max(200)
export const filePath = z.string().trim().min(1).max(1000)
