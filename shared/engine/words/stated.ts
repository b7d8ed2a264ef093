/** What was stated, as files and records keep it and as errors carry it. */
import { z } from 'zod'
import type { Statement } from './statement.ts'

/** A code with what its sentence is filled in with. */
export const saidSchema = z.strictObject({
	code: z.string(),
	params: z.record(z.string(), z.unknown()),
})
export type Said = z.infer<typeof saidSchema>
/** The same with its sentence for the clinician. */
export const statementSchema = saidSchema.extend({ says: z.string() })

/** A failure that is told: its code decides, its message is the sentence. */
export class StatedError extends Error {
	readonly said: Said
	constructor({ code, params, says }: Statement) {
		super(says)
		this.name = 'StatedError'
		this.said = { code, params: { ...params } }
	}
}
