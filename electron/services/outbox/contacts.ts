/**
 * Who may be a recipient: only people on the player's record. A typed address is put on record
 * first, twice and with its warnings.
 */
import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	addressWarnings,
	type KnownAddress,
	tidyAddress,
} from '../../../shared/desk/outbox/addresses.ts'
import {
	type Channel,
	type Contact,
	isMail,
	type OutboxItem,
	type OutboxKind,
	type Recipient,
	type RecipientRole,
	roleWords,
} from '../../../shared/desk/outbox/item.ts'
import { blockFor, kindsFor, purposesFor } from '../../../shared/desk/outbox/recipients.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { checkConsent } from '../people/consents.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { mayLeave } from '../visits/documents.ts'

/** The player this record was merged into, or the player itself. */
export function rootOf(state: State, playerId: string): string {
	const merge = [...state.merges.values()].find((entry) => entry.from === playerId)
	return merge ? rootOf(state, merge.into) : playerId
}
export const nameOf = (state: State, playerId: string): string => {
	const { player } = state.entry(playerId)
	return `${player.givenName} ${player.familyName}`
}
export const isMinor = (state: State, { now }: Deps, playerId: string): boolean =>
	ageYears(state.entry(playerId).player.birthDate, dayHere(now())) < state.settings.ages.adultYears
const contactsOf = (state: State, playerId: string): Contact[] => {
	const ids = state.idsOf(playerId)
	return [...state.contacts.values()]
		.map((contact) => contact.contact)
		.filter((one) => ids.includes(one.playerId) && !one.removed)
}

/** Everyone on one player's record. */
export function recipientsOf(state: State, of: string): Recipient[] {
	const playerId = rootOf(state, of)
	const { player } = state.entry(playerId)
	const own: Recipient[] = [
		{
			recipientId: 'player',
			name: nameOf(state, playerId),
			role: 'player',
			...(player.email ? { email: player.email } : {}),
		},
	]
	if (player.guardian)
		own.push({
			recipientId: 'guardian',
			name: player.guardian.name,
			role: 'guardian',
			...(player.guardian.email ? { email: player.guardian.email } : {}),
			...(player.guardian.phone ? { phone: player.guardian.phone } : {}),
		})
	return [
		...own,
		...contactsOf(state, playerId).map(({ contactId, name, role, email, phone }) => ({
			recipientId: contactId,
			name,
			role,
			...(email ? { email } : {}),
			...(phone ? { phone } : {}),
		})),
	]
}
export function recipientOf(state: State, playerId: string, recipientId: string): Recipient {
	const found = recipientsOf(state, playerId).find((one) => one.recipientId === recipientId)
	if (!found)
		throw new Refusal('This recipient is not on the record any more. Choose one from the record.')
	return found
}
/** Every address on record, with whose it is. */
function knownAddresses(state: State, clinicEmail: string | undefined): KnownAddress[] {
	const known: KnownAddress[] = clinicEmail ? [{ email: clinicEmail, of: 'the clinic' }] : []
	for (const { player } of state.players.values()) {
		if (player.email)
			known.push({ email: player.email, of: `${player.givenName} ${player.familyName}` })
		if (player.guardian?.email)
			known.push({ email: player.guardian.email, of: `${player.guardian.name}, guardian` })
	}
	for (const { contact } of state.contacts.values())
		if (contact.email && !contact.removed)
			known.push({ email: contact.email, of: `${contact.name}, ${roleWords[contact.role]}` })
	return known
}
/** How often messages to an address came back with a 5.x.x. */
const timesReturned = (state: State, email: string): number =>
	[...state.outbox.values()].filter(
		({ item }) =>
			item.statusCode?.startsWith('5') &&
			item.recipient.email !== undefined &&
			tidyAddress(item.recipient.email) === tidyAddress(email),
	).length
export function warningsFor(state: State, email: string): string[] {
	const times = timesReturned(state, email)
	return [
		...addressWarnings(email, knownAddresses(state, state.clinic?.email)),
		...(times > 0
			? [
					`${email} returned ${times === 1 ? 'a message' : `${times} messages`} as ` +
						'undeliverable. Check it with the recipient.',
				]
			: []),
	]
}
/** Roles of others on the same record that use the same address. */
const sharedRoles = (
	state: State,
	playerId: string,
	{ recipientId, email }: Recipient,
): RecipientRole[] =>
	email
		? recipientsOf(state, playerId)
				.filter(
					(one) =>
						one.recipientId !== recipientId &&
						one.email !== undefined &&
						tidyAddress(one.email) === tidyAddress(email),
				)
				.map((one) => one.role)
		: []
export function blocked(
	state: State,
	deps: Deps,
	playerId: string,
	recipient: Recipient,
	kind: OutboxKind,
	channel: Channel,
): string | undefined {
	return blockFor({
		recipient,
		kind,
		channel,
		minor: isMinor(state, deps, rootOf(state, playerId)),
		sharedWith: sharedRoles(state, playerId, recipient),
	})
}
/** The consents a delivery rests on, asked now. */
export function consentsFor(
	state: State,
	deps: Deps,
	playerId: string,
	recipient: Recipient,
	channel: Channel,
) {
	return purposesFor(recipient.role, channel).map((purpose) =>
		checkConsent(state, deps, rootOf(state, playerId), purpose, recipient.name),
	)
}
/**
 * Everything that must hold at the moment of sending. @throws Refusal with the reason. @returns ids
 * of the consents it rests on
 */
export function mustHold(
	state: State,
	deps: Deps,
	item: OutboxItem,
): { recipient: Recipient; consentIds: string[] } {
	const visit = mayLeave(state, deps, item.visitId)
	const version = visit.version ?? 1
	if (version > item.version && item.resend === undefined)
		throw new Refusal(
			`Version ${version} of this visit was signed meanwhile; this is version ${item.version}. ` +
				'Close this one and prepare the newer version.',
		)
	const recipient = recipientOf(state, item.playerId, item.recipient.recipientId)
	if (
		recipient.name !== item.recipient.name ||
		(isMail(item.channel) && recipient.email !== item.recipient.email)
	)
		throw new Refusal(
			`Name or address of ${item.recipient.name} was changed on the record after this was ` +
				'prepared. Close this one and prepare it anew.',
		)
	const block = blocked(state, deps, item.playerId, recipient, item.kind, item.channel)
	if (block) throw new Refusal(block)
	const answers = consentsFor(state, deps, item.playerId, recipient, item.channel)
	const no = answers.find((answer) => !answer.inForce)
	if (no) throw new Refusal(`Not sent: ${no.because}`)
	return { recipient, consentIds: answers.flatMap((answer) => answer.consentId ?? []) }
}
export function listRecipients(
	state: State,
	deps: Deps,
	{ visitId }: InputOf<'outbox.recipients'>,
): OutputOf<'outbox.recipients'> {
	const visit = mayLeave(state, deps, visitId)
	const playerId = rootOf(state, visit.playerId)
	const { player } = state.entry(playerId)
	return {
		playerId,
		playerName: nameOf(state, playerId),
		birthDate: player.birthDate,
		minor: isMinor(state, deps, playerId),
		visitDate: visit.visit.visitDate,
		version: visit.version ?? 1,
		recipients: recipientsOf(state, playerId).map((recipient) => ({
			recipient,
			kinds: [...kindsFor[recipient.role]],
			warnings: recipient.email ? warningsFor(state, recipient.email) : [],
			consents: consentsFor(
				state,
				deps,
				playerId,
				recipient,
				recipient.email ? 'smtp' : 'print',
			).map((answer) => answer.because),
		})),
	}
}
export function addContact(
	state: State,
	{ store, now }: Deps,
	{
		playerId: of,
		name,
		role,
		email: typed,
		emailAgain,
		phone,
		warningsRead,
	}: InputOf<'outbox.addContact'>,
): OutputOf<'outbox.addContact'> {
	const playerId = rootOf(state, of)
	state.entry(playerId)
	const email = tidyAddress(typed)
	if (email !== tidyAddress(emailAgain))
		throw new Refusal('The two addresses are not the same. Type both anew.', [
			{
				path: 'emailAgain',
				message: `given "${emailAgain}", allowed: the address typed above, "${typed}"`,
			},
		])
	if (email !== '' && !z.email().safeParse(email).success)
		throw new Refusal('This is not one e-mail address.', [
			{
				path: 'email',
				message: `given "${typed}", allowed: one address such as name@example.org; no lists`,
			},
		])
	if (
		contactsOf(state, playerId).some(
			(one) => one.name.toLowerCase() === name.toLowerCase() && one.email === (email || undefined),
		)
	)
		throw new Refusal(`${name} with this address is on the record already.`)
	const warnings = email ? warningsFor(state, email) : []
	if (warnings.length > 0 && !warningsRead) return { warnings }
	const at = now().toISOString()
	const contact: Contact = {
		contactId: randomUUID(),
		playerId,
		name,
		role,
		...(email ? { email } : {}),
		...(phone ? { phone } : {}),
		by: state.acts().name,
		at,
	}
	const recordId = store.append({
		kind: 'contact',
		at,
		value: contact,
		about: playerId,
		thing: contact.contactId,
	})
	state.contacts.set(contact.contactId, { contact, recordId })
	return { contactId: contact.contactId, warnings }
}
export function removeContact(
	state: State,
	{ store, now }: Deps,
	{ playerId, contactId }: InputOf<'outbox.removeContact'>,
): OutputOf<'outbox.removeContact'> {
	const known = state.contacts.get(contactId)
	if (
		!known ||
		!state.idsOf(rootOf(state, playerId)).includes(known.contact.playerId) ||
		known.contact.removed
	)
		throw new Refusal('This recipient is not on the record of this player.')
	const contact: Contact = { ...known.contact, removed: true }
	const recordId = store.append({
		kind: 'contact',
		at: now().toISOString(),
		follows: known.recordId,
		value: contact,
		about: contact.playerId,
		thing: contactId,
	})
	state.contacts.set(contactId, { contact, recordId })
	return {}
}
