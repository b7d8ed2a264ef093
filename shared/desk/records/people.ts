/**
 * The people who work with the records. Each has a passphrase of their own; what a role may do
 * stands in the contract.
 */
import { z } from 'zod'

export const staffRoles = ['owner', 'clinician', 'student', 'reception'] as const
export type StaffRole = (typeof staffRoles)[number]
export const personSchema = z.strictObject({
	personId: z.string().min(1).max(80),
	name: z.string().trim().min(1).max(120),
	registration: z.string().trim().max(60),
	role: z.enum(staffRoles),
	active: z.boolean(),
	hasPin: z.boolean(),
	/** too many wrong PINs: only the passphrase lets them in */
	pinBarred: z.boolean().optional(),
	/** did not unlock since the upgrade: a new key of the records would shut them out */
	oldKey: z.boolean().optional(),
})
/**
 * What a person typed about another one, checked for sense. @returns sentences, empty where all is
 * well
 */
export function personProblems(person: {
	role: StaffRole
	registration: string
}): { path: string; message: string }[] {
	return person.role === 'clinician' && !person.registration.trim()
		? [
				{
					path: 'registration',
					message:
						'missing, given nothing, allowed: the registration number that stands under signed ' +
						'reports',
				},
			]
		: []
}
