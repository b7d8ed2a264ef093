/**
 * What must be read before a document leaves: notes on the record, other people named in it, a
 * guardian whose right has ended; and who must be told of a newer version.
 */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { SendingNote } from '../../../shared/desk/outbox/calls.ts'
import {
	isMail,
	numberOf,
	type OutboxItem,
	type Recipient,
} from '../../../shared/desk/outbox/item.ts'
import { type Named, othersNamed, textsIn } from '../../../shared/desk/outbox/others.ts'
import { transmissionSheet } from '../../../shared/desk/outbox/sheet.ts'
import { type HandedOver, mustBeTold } from '../../../shared/desk/records/amendment.ts'
import { type Deps, Refusal, type State } from '../records/state.ts'
import { storedDocument } from '../visits/documents.ts'
import { pdfOf } from '../visits/drawing.ts'
import { openVisit, visitsOf } from '../visits/visits.ts'
import { isMinor, nameOf, recipientsOf, rootOf, warningsFor } from './contacts.ts'
import { itemOf } from './items.ts'

const notesOf = (state: State, playerId: string): SendingNote[] => {
	const ids = state.idsOf(rootOf(state, playerId))
	return [...state.sendingNotes.values()]
		.map((sendingNote) => sendingNote.note)
		.filter((note) => ids.includes(note.playerId) && note.removed === undefined)
}
function putNote(state: State, { store }: Deps, note: SendingNote, at: string): void {
	const known = state.sendingNotes.get(note.noteId)
	const recordId = store.append({
		kind: 'sending-note',
		at,
		...(known ? { follows: known.recordId } : {}),
		value: note,
		about: note.playerId,
		thing: note.noteId,
	})
	state.sendingNotes.set(note.noteId, { note, recordId })
}
/** Everyone on record who has nothing to do with this player's documents. */
function strangers(state: State, playerId: string): Named[] {
	const ids = state.idsOf(playerId)
	const people: Named[] = []
	for (const [id, { player }] of state.players) {
		if (ids.includes(id) || state.mergedAway(id)) continue
		people.push({ name: `${player.givenName} ${player.familyName}`, as: 'another player' })
		if (player.guardian)
			people.push({ name: player.guardian.name, as: 'the guardian of another player' })
	}
	for (const { contact } of state.contacts.values())
		if (!ids.includes(contact.playerId) && !contact.removed)
			people.push({ name: contact.name, as: "a contact on another player's record" })
	return people
}
/** Words to read before it leaves; releasing asks that they were. */
export function alertsFor(
	state: State,
	deps: Deps,
	item: OutboxItem,
	recipient: Recipient,
): string[] {
	const playerId = rootOf(state, item.playerId)
	const { value } = storedDocument(deps, item.documentId, item.sha256)
	const visit = openVisit(deps, { visitId: item.visitId })
	const own = [
		nameOf(state, playerId),
		...recipientsOf(state, playerId).map((one) => one.name),
		...[...state.people.values()].map((person) => person.name),
		visit.signedBy.name,
		state.clinic?.name ?? '',
	]
	const texts = value.layout
		? textsIn({
				subject: value.layout.subject,
				blocks: value.layout.blocks,
				notes: value.layout.notes,
			})
		: textsIn({ visit: visit.visit, decisions: visit.decisions })
	return [
		...notesOf(state, playerId).map(
			(note) => `Note on this record: ${note.text} (${note.by}, ${note.at.slice(0, 10)})`,
		),
		...(recipient.role === 'guardian' && !isMinor(state, deps, playerId)
			? [
					`${nameOf(state, playerId)} is of age: as a guardian ${recipient.name} has no right ` +
						'to this any more. Send it only if the player agreed.',
				]
			: []),
		...othersNamed(texts, strangers(state, playerId), own).map(
			(named) =>
				`The document names ${named.name}, ${named.as} on record. Look whether ${recipient.name} ` +
				'may read that.',
		),
		...(recipient.email && isMail(item.channel) ? warningsFor(state, recipient.email) : []),
	]
}
/** Pages of stored PDF bytes, by their page objects. */
const pagesOf = (bytes: Uint8Array): number =>
	Math.max(
		1,
		(
			Buffer.from(bytes)
				.toString('latin1')
				.match(/\/Type\s*\/Page\b(?!s)/g) ?? []
		).length,
	)
export function alertCalls(state: State, deps: Deps) {
	return {
		'outbox.notes': ({ playerId }: InputOf<'outbox.notes'>): OutputOf<'outbox.notes'> => ({
			notes: notesOf(state, playerId),
		}),
		'outbox.addNote': ({
			playerId: of,
			text,
		}: InputOf<'outbox.addNote'>): OutputOf<'outbox.addNote'> => {
			const playerId = rootOf(state, of)
			state.entry(playerId)
			const at = deps.now().toISOString()
			const note: SendingNote = { noteId: randomUUID(), playerId, text, by: state.acts().name, at }
			putNote(state, deps, note, at)
			return { noteId: note.noteId }
		},
		'outbox.removeNote': ({ playerId, noteId, reason }: InputOf<'outbox.removeNote'>) => {
			const note = notesOf(state, playerId).find((one) => one.noteId === noteId)
			if (!note) throw new Refusal('This note is not on the record any more.')
			const at = deps.now().toISOString()
			putNote(state, deps, { ...note, removed: { by: state.acts().name, at, reason } }, at)
			return {}
		},
		/**
		 * Recipients of an earlier version of any of the player's visits who were not given the latest.
		 */
		'outbox.tell': ({ playerId }: InputOf<'outbox.tell'>): OutputOf<'outbox.tell'> => ({
			tell: visitsOf(state, deps, rootOf(state, playerId))
				.filter((line) => !line.inError)
				.flatMap(({ card }) =>
					mustBeTold(
						deps.store.cardsOf('sending', card.visitId).map((one) => one.card as HandedOver),
						card.version,
					).map((over) => ({
						...over,
						visitId: card.visitId,
						visitDate: card.visitDate,
						latest: card.version,
					})),
				),
		}),
		'outbox.sheet': async ({
			itemId,
		}: InputOf<'outbox.sheet'>): Promise<OutputOf<'outbox.sheet'>> => {
			const item = itemOf(state, itemId)
			if (!state.clinic)
				throw new Refusal('The clinic is not set up. Fill in the letterhead first.')
			if (!item.released && item.sentAt === undefined)
				throw new Refusal(
					'This was not checked yet. Release it first; then its transmission sheet can be printed.',
				)
			const { bytes: document } = storedDocument(deps, item.documentId, item.sha256)
			const bytes = await deps.renderPdf(
				transmissionSheet({
					item,
					clinic: state.clinic,
					by: state.acts().name,
					at: deps.now().toISOString(),
					pages: pagesOf(document),
				}),
			)
			deps.store.audit({
				function: 'print',
				objectRef: `sheet:${numberOf(itemId)}`,
				playerId: item.playerId,
			})
			return pdfOf(bytes, `sheet-${numberOf(itemId)}.pdf`)
		},
	}
}
