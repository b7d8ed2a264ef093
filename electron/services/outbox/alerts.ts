/**
 * What must be read before a document leaves: notes on the record, other people named in it, a
 * guardian whose right has ended.
 */

import { isMail, type OutboxItem, type Recipient } from '../../../shared/desk/outbox/item.ts'
import { type Named, othersNamed } from '../../../shared/desk/outbox/others.ts'
import { withoutRestricted } from '../../../shared/desk/visits/restricted.ts'
import { textsIn } from '../../../shared/engine/report/texts.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { documentRead, storedDocument } from '../visits/documents.ts'
import { openVisit } from '../visits/visits.ts'
import { warningsFor } from './contacts.ts'
import type { OutboxNeeds } from './needs.ts'
import { notesOf } from './notes.ts'
import { isMinor, recipientsOf } from './recipients.ts'

/** Everyone on record who has nothing to do with this player's documents. */
function strangers(
	{ players, outbox }: Pick<Memory, 'outbox' | 'players'>,
	playerId: string,
): Named[] {
	const ids = players.idsOf(playerId)
	const people: Named[] = []
	for (const [id, { player }] of players.byId) {
		if (ids.includes(id) || players.mergedAway(id)) continue
		people.push({ name: fullName(player), as: 'another player' })
		if (player.guardian)
			people.push({ name: player.guardian.name, as: 'the guardian of another player' })
	}
	for (const contact of outbox.contacts.all())
		if (!ids.includes(contact.playerId) && !contact.removed)
			people.push({ name: contact.name, as: "a contact on another player's record" })
	return people
}
/** The document names somebody of another record. */
function namesOthers(
	memory: OutboxNeeds,
	deps: Deps,
	item: OutboxItem,
	recipient: Recipient,
): string[] {
	const { players, people, clinic } = memory
	const playerId = players.rootOf(item.playerId)
	const { value } = storedDocument(deps, item.documentId, item.sha256)
	const visit = openVisit(deps, { visitId: item.visitId })
	const own = [
		players.nameOf(playerId),
		...recipientsOf(memory, playerId).map(({ name }) => name),
		...people.all().map(({ name }) => name),
		visit.signedBy.name,
		clinic.letterhead?.name ?? '',
	]
	const document = documentRead(deps, value, visit.clinic)
	const texts = document
		? textsIn({ subject: document.subject, blocks: document.blocks, notes: document.notes })
		: textsIn({ visit: withoutRestricted(visit.visit), decisions: visit.decisions })
	return othersNamed(texts, strangers(memory, playerId), own).map(
		(named) =>
			`The document names ${named.name}, ${named.as} on record. Look whether ${recipient.name} ` +
			'may read that.',
	)
}
/** A guardian has no right to the documents of a player of age. */
function guardianOfAdult(
	memory: OutboxNeeds,
	deps: Deps,
	playerId: string,
	recipient: Recipient,
): string[] {
	if (recipient.role !== 'guardian' || isMinor(memory, deps, playerId)) return []
	return [
		`${memory.players.nameOf(playerId)} is of age: as a guardian ${recipient.name} has no right ` +
			'to this any more. Send it only if the player agreed.',
	]
}
/** A note that cannot be read may forbid what is about to happen. */
const unreadNotes = (
	{ players }: Pick<Memory, 'players'>,
	{ openAbout }: Deps,
	playerId: string,
): string[] =>
	players
		.idsOf(playerId)
		.flatMap((id) => openAbout('sending-note', id).unread)
		.map((says) => `A note on this record cannot be read. ${says}`)
/** Words to read before it leaves; releasing asks that they were. */
export function alertsFor(
	memory: OutboxNeeds,
	deps: Deps,
	item: OutboxItem,
	recipient: Recipient,
): string[] {
	const playerId = memory.players.rootOf(item.playerId)
	const byMail = recipient.email && isMail(item.channel) ? recipient.email : undefined
	return [
		...notesOf(memory, playerId).map(
			(note) => `Note on this record: ${note.text} (${note.by}, ${note.at.slice(0, 10)})`,
		),
		...unreadNotes(memory, deps, playerId),
		...guardianOfAdult(memory, deps, playerId, recipient),
		...namesOthers(memory, deps, item, recipient),
		...(byMail ? warningsFor(memory, byMail, recipient.name) : []),
	]
}
