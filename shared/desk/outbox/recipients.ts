/** Who may be given what, by which way, and which consents are asked at the moment of sending. */
import type { Player } from '../../engine/visit/visit.ts'
import { fullPaperName, guardianPaperName } from '../../engine/words/names.ts'
import type { Purpose } from '../records/consent.ts'
import {
	type Channel,
	isMail,
	kindWords,
	type OutboxKind,
	type Recipient,
	type RecipientRole,
	roleWords,
} from './item.ts'

/**
 * A coach is given the whitelisted letter only; a laboratory its order only (practice standard 1.5,
 * 2.5, 2.6).
 */
export const kindsFor: Record<RecipientRole, readonly OutboxKind[]> = {
	player: ['player', 'referral', 'coach', 'reminder'],
	guardian: ['guardian', 'player', 'referral', 'coach', 'reminder'],
	doctor: ['referral', 'player'],
	coach: ['coach'],
	laboratory: ['insert-order'],
}
/**
 * The purpose of sharing with each role; none for the player's own record in the player's or
 * guardian's hands.
 */
const sharing: Record<RecipientRole, Purpose | undefined> = {
	player: undefined,
	guardian: undefined,
	doctor: 'share-with-care',
	coach: 'share-with-coach',
	laboratory: 'laboratory',
}
/** The name of a recipient as it is printed: player and guardian in letters that the pages have. */
export function nameOnPaper({ role, name }: Recipient, player: Player): string {
	const { guardian, latinName } = player
	if (role === 'player' && latinName) return fullPaperName(player)
	return role === 'guardian' && name === guardian?.name ? guardianPaperName(guardian) : name
}
/** Consents that must be in force for this recipient. */
export function purposesFor(role: RecipientRole, channel: Channel): Purpose[] {
	const share = sharing[role]
	return [...(share ? [share] : []), ...(isMail(channel) ? ['email' as const] : [])]
}
export interface Delivery {
	recipient: Recipient
	kind: OutboxKind
	channel: Channel
	minor: boolean
	/** other roles on this player's record that use the same address */
	sharedWith: readonly RecipientRole[]
}
/**
 * Reports that speak of the whole visit, and a reminder to come again: for a minor they go to a
 * guardian's address only (practice standard 5.4).
 */
const wholeReports: readonly OutboxKind[] = ['player', 'guardian', 'reminder']
/** Why a delivery is not allowed, whatever the consents say; undefined where it is. */
export function blockFor({
	recipient,
	kind,
	channel,
	minor,
	sharedWith,
}: Delivery): string | undefined {
	const { role, name, email } = recipient
	if (!kindsFor[role].includes(kind))
		return (
			`${kindWords[kind]} is not for a ${roleWords[role]}. Given ${name}; allowed for ` +
			`them: ${kindsFor[role].map((allowed) => kindWords[allowed].toLowerCase()).join(', ')}.`
		)
	if (kind === 'reminder' && minor && role !== 'guardian')
		return (
			`The player is a minor: a reminder goes to a guardian. Given ${name} (${roleWords[role]}). ` +
			'Add the guardian to the record.'
		)
	if (!isMail(channel)) return undefined
	if (!email)
		return (
			`No e-mail address of ${name} is on record. Add it to the record, or choose print or ` +
			'hand over.'
		)
	if (!minor || !wholeReports.includes(kind)) return undefined
	if (role !== 'guardian')
		return (
			'The player is a minor: this report goes by e-mail only to a guardian who consented. ' +
			`Given ${email} of ${name} (${roleWords[role]}). Choose the guardian, print, or hand ` +
			'over.'
		)
	const wrong = sharedWith.find((other) => other !== 'guardian')
	return wrong
		? `The player is a minor, and ${email} stands on the record of a ${roleWords[wrong]} too. ` +
				`It is not a guardian's own address: ask for another one, print, or hand over.`
		: undefined
}
