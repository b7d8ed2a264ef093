/** Whom the consents of a roster are for: a list says to what, not to whom. */
import { z } from 'zod'
import type { RecipientRole } from '../outbox/item.ts'
import type { Purpose } from '../records/consent.ts'

/** Purposes that are given for one person outside, by the role of that person. */
export const sharingPurposes = {
	coach: 'share-with-coach',
	doctor: 'share-with-care',
	laboratory: 'laboratory',
} as const satisfies Partial<Record<RecipientRole, Purpose>>
export type SharingRole = keyof typeof sharingPurposes
export const sharingRoles = Object.keys(sharingPurposes) as SharingRole[]

const shared = z.strictObject({
	name: z.string().trim().min(1).max(160),
	/** typed twice; both empty where there is none */
	email: z.string().trim().max(254),
	emailAgain: z.string().trim().max(254),
	warningsRead: z.boolean().optional(),
})
/** Who is meant, by role. */
export const rosterPeopleSchema = z.strictObject({
	coach: shared.optional(),
	doctor: shared.optional(),
	laboratory: shared.optional(),
})
export type RosterPeople = z.infer<typeof rosterPeopleSchema>

/** The roles that these consents need a person for. */
export const rolesAsked = (consents: readonly Purpose[]): SharingRole[] =>
	sharingRoles.filter((role) => consents.includes(sharingPurposes[role]))
