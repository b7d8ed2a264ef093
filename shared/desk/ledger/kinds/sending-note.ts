/** Something to know before anything of a player is sent. */
import { sendingNoteSchema } from '../../outbox/sending-note.ts'
import { defineKind } from '../kind.ts'

export const sendingNoteKind = defineKind({
	name: 'sending-note',
	version: 1,
	schema: sendingNoteSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'note on a record', many: 'notes on records' },
	thingOf: ({ noteId }) => noteId,
})
