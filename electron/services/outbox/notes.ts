/** Notes on a player's record that are shown before anything of it is sent. */
import { randomUUID } from 'node:crypto'
import type { InputOf, OutputOf } from '../../../shared/contract.ts'
import type { SendingNote } from '../../../shared/desk/outbox/sending-note.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'

type Needs = Pick<Memory, 'outbox' | 'people' | 'players'>

/** The notes that stand on a player's record, and on those merged with it. */
export function notesOf(
	{ players, outbox }: Pick<Memory, 'outbox' | 'players'>,
	playerId: string,
): SendingNote[] {
	const ids = players.idsOf(players.rootOf(playerId))
	return outbox.notes
		.all()
		.filter((note) => ids.includes(note.playerId) && note.removed === undefined)
}
function putNote({ outbox }: Needs, { keep }: Deps, note: SendingNote, at: string): void {
	keep({
		kind: 'sending-note',
		at,
		follows: outbox.notes.recordOf(note.noteId),
		value: note,
		about: note.playerId,
		thing: note.noteId,
	})
}
export const listNotes = (
	memory: Needs,
	{ playerId }: InputOf<'outbox.notes'>,
): OutputOf<'outbox.notes'> => ({ notes: notesOf(memory, playerId) })

export function addNote(
	memory: Needs,
	deps: Deps,
	{ playerId: of, text }: InputOf<'outbox.addNote'>,
): OutputOf<'outbox.addNote'> {
	const playerId = memory.players.rootOf(of)
	memory.players.entry(playerId)
	const at = deps.now().toISOString()
	const by = memory.people.acts().name
	const note: SendingNote = { noteId: randomUUID(), playerId, text, by, at }
	putNote(memory, deps, note, at)
	return { noteId: note.noteId }
}
export function removeNote(
	memory: Needs,
	deps: Deps,
	{ playerId, noteId, reason }: InputOf<'outbox.removeNote'>,
): OutputOf<'outbox.removeNote'> {
	const note = notesOf(memory, playerId).find((standing) => standing.noteId === noteId)
	if (!note) throw new Refusal('outbox.note-is-gone', 'This note is not on the record any more.')
	const at = deps.now().toISOString()
	const removed = { by: memory.people.acts().name, at, reason }
	putNote(memory, deps, { ...note, removed }, at)
	return {}
}
