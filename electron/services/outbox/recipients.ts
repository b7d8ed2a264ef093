/** Who may be a recipient: only people on the player's record, each under what holds for them. */
import type { InputOf, OutputOf, SignedVisit } from '../../../shared/contract.ts'
import { tidyAddress } from '../../../shared/desk/outbox/addresses.ts'
import {
	type Channel,
	isMail,
	type OutboxItem,
	type OutboxKind,
	type Recipient,
	type RecipientRole,
} from '../../../shared/desk/outbox/item.ts'
import { blockFor, kindsFor, purposesFor } from '../../../shared/desk/outbox/recipients.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import type { RefusalCode } from '../../../shared/desk/workplace/refusal.ts'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { contestedBlock } from '../outreach/questions.ts'
import { checkConsent } from '../people/consents.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { mayLeave } from '../visits/composing.ts'
import { visitsOf } from '../visits/visits.ts'
import { contactsOf, warningsFor } from './contacts.ts'
import type { OutboxNeeds } from './needs.ts'

export function isMinor(
	{ players, clinic }: Pick<Memory, 'clinic' | 'players'>,
	{ now }: Deps,
	playerId: string,
): boolean {
	const { birthDate } = players.entry(playerId).player
	return ageYears(birthDate, dayHere(now())) < clinic.settings.ages.adultYears
}
/** Everyone on one player's record. */
export function recipientsOf(memory: Pick<Memory, 'outbox' | 'players'>, of: string): Recipient[] {
	const playerId = memory.players.rootOf(of)
	const { player } = memory.players.entry(playerId)
	const { guardian } = player
	const own: Recipient[] = [
		{
			recipientId: 'player',
			name: memory.players.nameOf(playerId),
			role: 'player',
			...(player.email && { email: player.email }),
			...(player.phone && { phone: player.phone }),
		},
	]
	if (guardian)
		own.push({
			recipientId: 'guardian',
			name: guardian.name,
			role: 'guardian',
			...(guardian.email && { email: guardian.email }),
			...(guardian.phone && { phone: guardian.phone }),
		})
	const contacts = contactsOf(memory, playerId).map(({ contactId, name, role, email, phone }) => ({
		recipientId: contactId,
		name,
		role,
		...(email && { email }),
		...(phone && { phone }),
	}))
	return [...own, ...contacts]
}
/** @throws Refusal where nobody on the record has this id */
export function recipientOf(
	memory: Pick<Memory, 'outbox' | 'players'>,
	playerId: string,
	recipientId: string,
): Recipient {
	const found = recipientsOf(memory, playerId).find(
		(recipient) => recipient.recipientId === recipientId,
	)
	if (!found)
		throw new Refusal(
			'outbox.recipient-is-gone',
			'This recipient is not on the record any more. Choose one from the record.',
		)
	return found
}
/** Roles of others on the same record that use the same address. */
function sharedRoles(
	memory: Pick<Memory, 'outbox' | 'players'>,
	playerId: string,
	{ recipientId, email }: Recipient,
): RecipientRole[] {
	if (!email) return []
	return recipientsOf(memory, playerId)
		.filter(
			(other) =>
				other.recipientId !== recipientId &&
				other.email !== undefined &&
				tidyAddress(other.email) === tidyAddress(email),
		)
		.map((other) => other.role)
}
/** What of which way to whom. */
export interface Delivery {
	playerId: string
	recipient: Recipient
	kind: OutboxKind
	channel: Channel
}
/** The way of mail from this PC: by its mail server, else as a draft for the mail program. */
export const mailWay = ({ outbox }: Pick<Memory, 'outbox'>): Channel =>
	outbox.mail.smtp ? 'smtp' : 'eml'
/** Why a document must not go this way to this recipient; undefined where it may. */
export function blocked(
	memory: Pick<Memory, 'clinic' | 'outbox' | 'outreach' | 'players'>,
	deps: Deps,
	{ playerId, recipient, kind, channel }: Delivery,
): { code: RefusalCode; says: string } | undefined {
	const contested = contestedBlock(memory, deps, playerId, recipient.role)
	if (contested !== undefined) return { code: 'outbox.contested', says: contested }
	const says = blockFor({
		recipient,
		kind,
		channel,
		minor: isMinor(memory, deps, memory.players.rootOf(playerId)),
		sharedWith: sharedRoles(memory, playerId, recipient),
	})
	return says === undefined ? undefined : { code: 'outbox.blocked', says }
}
/** What stands in the way of going this way now: a rule, else a right that is missing, in words. */
export const inTheWay = (memory: OutboxNeeds, deps: Deps, delivery: Delivery): string | undefined =>
	blocked(memory, deps, delivery)?.says ??
	consentsFor(memory, deps, delivery).find(({ inForce }) => !inForce)?.because

/** By mail where there is an address and a consent to use it, else on paper. */
export function wayFor(
	memory: OutboxNeeds,
	deps: Deps,
	delivery: Omit<Delivery, 'channel'>,
): Channel {
	const channel = mailWay(memory)
	return inTheWay(memory, deps, { ...delivery, channel }) === undefined ? channel : 'print'
}
/**
 * Who is a minor, and who may be given what, hangs on the birth date: where the record and the
 * signed document say two, nothing leaves. @throws Refusal
 */
export function refuseOtherBirthDate(
	{ players }: Pick<Memory, 'players'>,
	{ playerId, visit }: SignedVisit,
): void {
	const { birthDate } = players.entry(players.rootOf(playerId)).player
	if (birthDate === visit.player.birthDate) return
	throw new Refusal(
		'outbox.birth-date-differs',
		`The signed document says born ${dayInWords(visit.player.birthDate)}, the record ` +
			`${dayInWords(birthDate)}. Nothing is sent while they differ: have a clinician correct the ` +
			'record, or amend the visit.',
	)
}
/** The consents a delivery rests on, asked now. */
export function consentsFor(
	memory: OutboxNeeds,
	deps: Deps,
	{ playerId, recipient, channel }: Omit<Delivery, 'kind'>,
) {
	return purposesFor(recipient.role, channel).map((purpose) => ({
		purpose,
		...checkConsent(memory, deps, memory.players.rootOf(playerId), purpose, recipient.name),
	}))
}
/**
 * Everything that must hold at the moment of sending. @throws Refusal with the reason. @returns ids
 * of the consents it rests on
 */
export function mustHold(
	memory: OutboxNeeds,
	deps: Deps,
	item: OutboxItem,
): { recipient: Recipient; consentIds: string[] } {
	const visit = mayLeave(memory.players, deps, item.visitId)
	refuseOtherBirthDate(memory, visit)
	const version = visit.version ?? 1
	if (version > item.version && item.resend === undefined)
		throw new Refusal(
			'outbox.newer-version',
			`Version ${version} of this visit was signed meanwhile; this is version ${item.version}. ` +
				'Close this one and prepare the newer version.',
		)
	if (item.kind === 'reminder') mustNotBeSeen(memory, deps, item)
	const recipient = recipientOf(memory, item.playerId, item.recipient.recipientId)
	refuseChanged(item, recipient)
	const delivery: Delivery = { ...item, recipient }
	const block = blocked(memory, deps, delivery)
	if (block) throw new Refusal(block.code, block.says)
	const answers = consentsFor(memory, deps, delivery)
	const missing = answers.find((answer) => !answer.inForce)
	if (missing) throw new Refusal('outbox.no-consent', `Not sent: ${missing.because}`)
	return { recipient, consentIds: answers.flatMap((answer) => answer.consentId ?? []) }
}
/** @throws Refusal where a visit was signed after the one that asked for the reminder */
function mustNotBeSeen(
	{ players }: Pick<Memory, 'players'>,
	deps: Deps,
	{ playerId, visitId }: OutboxItem,
): void {
	const newest = visitsOf(players, deps, players.rootOf(playerId)).find(({ inError }) => !inError)
	if (newest === undefined || newest.card.visitId === visitId) return
	throw new Refusal(
		'outbox.seen-since',
		'The player was seen since this reminder was made. Close it; what is due now stands under Due.',
	)
}
/** @throws Refusal where the record names somebody else, or another address, than was checked */
function refuseChanged({ recipient: checked, channel }: OutboxItem, now: Recipient): void {
	if (now.name === checked.name && (!isMail(channel) || now.email === checked.email)) return
	throw new Refusal(
		'outbox.recipient-changed',
		`Name or address of ${checked.name} was changed on the record after this was ` +
			'prepared. Close this one and prepare it anew.',
	)
}
export function listRecipients(
	memory: OutboxNeeds,
	deps: Deps,
	{ visitId }: InputOf<'outbox.recipients'>,
): OutputOf<'outbox.recipients'> {
	const { players } = memory
	const visit = mayLeave(players, deps, visitId)
	const playerId = players.rootOf(visit.playerId)
	return {
		playerId,
		playerName: players.nameOf(playerId),
		birthDate: players.entry(playerId).player.birthDate,
		minor: isMinor(memory, deps, playerId),
		visitDate: visit.visit.visitDate,
		version: visit.version ?? 1,
		recipients: recipientsOf(memory, playerId).map((recipient) => ({
			recipient,
			kinds: kindsFor[recipient.role].flatMap((kind) => (kind === 'reminder' ? [] : [kind])),
			warnings: recipient.email ? warningsFor(memory, recipient.email, recipient.name) : [],
			consents: consentsFor(memory, deps, {
				playerId,
				recipient,
				channel: recipient.email ? 'smtp' : 'print',
			}).map(({ purpose, because }) => ({ purpose, says: because })),
		})),
	}
}
