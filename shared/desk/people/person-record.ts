/** A person as a record of the kind 'person' holds them. */
import { z } from 'zod'
import { staffRoles } from '../records/people.ts'
import { pinDigestSchema } from './pin-digest.ts'

export const personRecordSchema = z.strictObject({
	personId: z.string().min(1).max(80),
	/** the name of the key slot that the person's passphrase opens */
	slot: z.string().min(1),
	name: z.string(),
	registration: z.string(),
	role: z.enum(staffRoles),
	active: z.boolean(),
	pin: pinDigestSchema.optional(),
})
export type PersonValue = z.infer<typeof personRecordSchema>
