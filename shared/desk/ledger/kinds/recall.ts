/** What the desk answered about something that a player is due for. */
import { recallRecordSchema } from '../../recall/answer.ts'
import { defineKind } from '../kind.ts'

export const recallKind = defineKind({
	name: 'recall',
	version: 1,
	schema: recallRecordSchema,
	upgrades: [],
	// half an answer could end what the whole only puts off
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'answer about what is due', many: 'answers about what is due' },
})
