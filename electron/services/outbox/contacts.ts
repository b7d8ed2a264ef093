/**
 * Addresses on record. A typed address is put on record first, twice and with its warnings; then it
 * can be a recipient's.
 */

import { randomUUID } from 'node:crypto'
import { z } from 'zod'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import {
	addressWarnings,
	type KnownAddress,
	tidyAddress,
} from '../../../shared/desk/outbox/addresses.ts'
import { type Contact, roleWords } from '../../../shared/desk/outbox/item.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { needPrintable } from '../records/on-paper.ts'
import { Refusal } from '../records/refusal.ts'

type Needs = Pick<Memory, 'clinic' | 'outbox' | 'people' | 'players'>

/** The contacts on one player's record, and on those merged into it. */
export function contactsOf(
	{ players, outbox }: Pick<Memory, 'outbox' | 'players'>,
	playerId: string,
): Contact[] {
	const ids = players.idsOf(playerId)
	return outbox.contacts
		.all()
		.filter((contact) => ids.includes(contact.playerId) && !contact.removed)
}
/** Every address on record, with whose it is. */
function knownAddresses({ clinic, outbox, players }: Omit<Needs, 'people'>): KnownAddress[] {
	const known: KnownAddress[] = []
	const add = (email: string | undefined, name: string, of: string) => {
		if (email) known.push({ email, name, of })
	}
	add(clinic.letterhead?.email, clinic.letterhead?.name ?? '', 'the clinic')
	for (const { player } of players.byId.values()) {
		const { guardian } = player
		add(player.email ?? undefined, fullName(player), roleWords.player)
		if (guardian) add(guardian.email ?? undefined, guardian.name, roleWords.guardian)
	}
	for (const contact of outbox.contacts.all())
		if (!contact.removed) add(contact.email, contact.name, roleWords[contact.role])
	return known
}
/** How often messages to an address came back with a 5.x.x. */
const timesReturned = ({ outbox }: Pick<Memory, 'outbox'>, email: string): number =>
	outbox.items
		.all()
		.filter(
			(item) =>
				item.statusCode?.startsWith('5') &&
				item.recipient.email !== undefined &&
				tidyAddress(item.recipient.email) === tidyAddress(email),
		).length
/** What to read before something is sent to an address of this person. */
export function warningsFor(memory: Omit<Needs, 'people'>, email: string, whose: string): string[] {
	const warnings = addressWarnings(email, whose, knownAddresses(memory))
	const times = timesReturned(memory, email)
	if (times === 0) return warnings
	const messages = times === 1 ? 'a message' : `${times} messages`
	return [
		...warnings,
		`${email} returned ${messages} as undeliverable. Check it with the recipient.`,
	]
}
/** @throws Refusal where the two typed addresses differ, or are not one address */
export function addressTyped({
	email: typed,
	emailAgain,
}: Pick<InputOf<'outbox.addContact'>, 'email' | 'emailAgain'>): string {
	const email = tidyAddress(typed)
	if (email !== tidyAddress(emailAgain))
		throw new Refusal(
			'outbox.addresses-differ',
			'The two addresses are not the same. Type both anew.',
			[
				{
					path: 'emailAgain',
					message: `given "${emailAgain}", allowed: the address typed above, "${typed}"`,
				},
			],
		)
	if (email !== '' && !z.email().safeParse(email).success)
		throw new Refusal('outbox.not-an-address', 'This is not one e-mail address.', [
			{
				path: 'email',
				message: `given "${typed}", allowed: one address such as name@example.org; no lists`,
			},
		])
	return email
}
export function addContact(
	memory: Needs,
	deps: Deps,
	input: InputOf<'outbox.addContact'>,
): OutputOf<'outbox.addContact'> {
	const { name, role, phone, warningsRead } = input
	const playerId = memory.players.rootOf(input.playerId)
	memory.players.entry(playerId)
	needPrintable({ name })
	const email = addressTyped(input)
	const isThere = contactsOf(memory, playerId).some(
		(contact) =>
			contact.name.toLowerCase() === name.toLowerCase() && contact.email === (email || undefined),
	)
	if (isThere)
		throw new Refusal(
			'outbox.contact-exists',
			`${name} with this address is on the record already.`,
		)
	const warnings = email ? warningsFor(memory, email, name) : []
	if (warnings.length > 0 && !warningsRead) return { warnings }
	return { contactId: keepContact(memory, deps, { playerId, name, role, email, phone }), warnings }
}
interface NewContact extends Pick<Contact, 'playerId' | 'name' | 'role'> {
	/** '' for none */
	email: string
	phone?: string | undefined
}
/** @returns its id */
export function keepContact(
	{ people }: Pick<Memory, 'people'>,
	deps: Deps,
	{ playerId, name, role, email, phone }: NewContact,
): string {
	const at = deps.now().toISOString()
	const contact: Contact = {
		contactId: randomUUID(),
		playerId,
		name,
		role,
		...(email && { email }),
		...(phone && { phone }),
		by: people.acts().name,
		at,
	}
	const { contactId } = contact
	deps.keep({ kind: 'contact', at, value: contact, about: playerId, thing: contactId })
	return contactId
}
export function removeContact(
	{ players, outbox }: Pick<Memory, 'outbox' | 'players'>,
	{ keep }: Deps,
	{ playerId, contactId }: InputOf<'outbox.removeContact'>,
): OutputOf<'outbox.removeContact'> {
	const known = outbox.contacts.get(contactId)
	const ids = players.idsOf(players.rootOf(playerId))
	if (!known || known.removed || !ids.includes(known.playerId))
		throw new Refusal(
			'outbox.contact-unknown',
			'This recipient is not on the record of this player.',
		)
	const contact: Contact = { ...known, removed: true }
	keep({
		kind: 'contact',
		follows: outbox.contacts.recordOf(contactId),
		value: contact,
		about: contact.playerId,
		thing: contactId,
	})
	return {}
}
