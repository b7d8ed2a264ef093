/**
 * Consent per purpose and per recipient: dated, given by someone, revocable. Without a record the
 * answer is no.
 */
import { z } from 'zod'
import { dayInWords } from '../../engine/plain/days.ts'
import { present } from '../../engine/plain/present.ts'
import { consentGivers } from '../../engine/report/club.ts'
import { ageYears } from '../../engine/visit/age.ts'

/** Practice standard 1.4: the purposes to keep apart, and what holds where nothing is on record. */
export const purposes = {
	'assessment-and-record': { says: 'assessment and record', without: 'ask' },
	photos: { says: 'photos', without: 'deny' },
	'share-with-care': { says: 'sharing with a doctor or physiotherapist', without: 'ask' },
	'share-with-coach': { says: 'sharing with a coach or club', without: 'deny' },
	'squad-summary': { says: 'the squad summary', without: 'deny' },
	laboratory: { says: 'an order at the laboratory', without: 'ask' },
	email: { says: 'use of e-mail', without: 'deny' },
	'teaching-or-research': { says: 'teaching or research', without: 'deny' },
} as const
export type Purpose = keyof typeof purposes
export const purposeNames = Object.keys(purposes) as [Purpose, ...Purpose[]]

/**
 * Ages of the place, set by the clinic. Defaults: 18 adult, 16 own consent (England, Family Law
 * Reform Act 1969 s 8; South Australia 1995 Act s 6: read, practice standard R[30] R[31]). Local
 * law decides.
 */
export const agesSchema = z.strictObject({
	adultYears: z.int().min(14).max(25),
	ownConsentYears: z.int().min(10).max(25),
})
export type Ages = z.infer<typeof agesSchema>
export const defaultAges: Ages = { adultYears: 18, ownConsentYears: 16 }

export const grantedBy = consentGivers
export const newConsentSchema = z.strictObject({
	purpose: z.enum(purposeNames),
	/** Name of the one recipient it is meant for; empty for a purpose without a recipient. */
	recipient: z.string().trim().max(160),
	decision: z.enum(['permit', 'deny']),
	grantor: z.strictObject({ name: z.string().trim().min(1).max(160), relation: z.enum(grantedBy) }),
	capacityNote: z.string().max(500).optional(),
	method: z.enum(['verbal', 'written', 'e-sign']),
	witness: z.string().max(160).optional(),
	textVersion: z.string().max(80).optional(),
	given: z.iso.date(),
	expires: z.iso.date().optional(),
})
export type NewConsent = z.infer<typeof newConsentSchema>
export const consentSchema = newConsentSchema.extend({
	consentId: z.string(),
	recordedAt: z.string(),
	withdrawn: z.iso.date().optional(),
	withdrawnBy: z.string().max(160).optional(),
})
export type Consent = z.infer<typeof consentSchema>

const needsRecipient: readonly Purpose[] = [
	'share-with-care',
	'share-with-coach',
	'laboratory',
	'email',
]
const plainName = (name: string): string => name.normalize('NFKC').trim().toLowerCase()
const sameName = (first: string, second: string): boolean => plainName(first) === plainName(second)
/** What is wrong with a consent as typed. @param on today */
export function consentProblems(
	consent: NewConsent,
	on: string,
): { path: string; message: string }[] {
	const problems: { path: string; message: string }[] = []
	if (needsRecipient.includes(consent.purpose) && consent.recipient === '')
		problems.push({
			path: 'recipient',
			message:
				'missing, given nothing, allowed: the one recipient that ' +
				`${purposes[consent.purpose].says} is meant for`,
		})
	if (consent.given > on)
		problems.push({
			path: 'given',
			message: `in the future, given ${consent.given}, allowed: ${on} or earlier`,
		})
	if (consent.expires !== undefined && consent.expires <= consent.given)
		problems.push({
			path: 'expires',
			message:
				`not after the day it was given, given ${consent.expires}, allowed: a day after ` +
				`${consent.given}`,
		})
	return problems
}
export interface ConsentAnswer {
	inForce: boolean
	because: string
	consentId?: string
	expires?: string
}
interface ConsentQuestion {
	purpose: Purpose
	recipient: string
	on: string
	birthDate: string
	ages: Ages
}

/**
 * Whether a purpose is permitted for this recipient on this day. To be asked at the moment of use,
 * never kept.
 * @param consents of one player, in order of recording
 */
export function consentInForce(
	consents: readonly Consent[],
	{ purpose, recipient, on, birthDate, ages }: ConsentQuestion,
): ConsentAnswer {
	const { says, without } = purposes[purpose]
	const matching = consents.filter(
		(consent) =>
			consent.purpose === purpose && sameName(consent.recipient, recipient) && consent.given <= on,
	)
	// the later day counts; on the same day the later entry
	const last = matching.reduce<Consent | undefined>(
		(latest, consent) => (latest === undefined || consent.given >= latest.given ? consent : latest),
		undefined,
	)
	const whom = recipient ? ` for ${recipient}` : ''
	const no = (because: string): ConsentAnswer => ({
		inForce: false,
		because,
		...present({ consentId: last?.consentId }),
	})
	if (!last)
		return no(
			`No consent to ${says}${whom} is on record. ` +
				`${without === 'deny' ? 'Without one the answer is no.' : 'Ask for it first.'}`,
		)
	if (last.withdrawn !== undefined)
		return no(
			`Consent to ${says}${whom} was withdrawn on ` +
				`${dayInWords(last.withdrawn)}${last.withdrawnBy ? ` by ${last.withdrawnBy}` : ''}.`,
		)
	if (last.decision === 'deny')
		return no(`${last.grantor.name} refused ${says}${whom} on ${dayInWords(last.given)}.`)
	if (last.expires !== undefined && last.expires <= on)
		return no(`Consent to ${says}${whom} ran out on ${dayInWords(last.expires)}. Ask again.`)
	const age = ageYears(birthDate, on)
	if (
		last.grantor.relation !== 'player' &&
		last.grantor.relation !== 'other-authority' &&
		age >= ages.adultYears
	)
		return no(
			`Consent to ${says}${whom} was given by a ${last.grantor.relation}; the player is now ` +
				`${age}. Ask the player.`,
		)
	if (
		last.grantor.relation === 'player' &&
		ageYears(birthDate, last.given) < ages.ownConsentYears &&
		!last.capacityNote?.trim()
	)
		return no(
			`The player was under ${ages.ownConsentYears} when consenting to ${says}${whom} and no ` +
				'note on capacity stands. Ask the guardian, or note the capacity.',
		)
	return {
		inForce: true,
		because: `Consent to ${says}${whom} given by ${last.grantor.name} on ${dayInWords(last.given)}.`,
		consentId: last.consentId,
		...present({ expires: last.expires }),
	}
}
