/** Words added to a signed visit afterwards. */
import { visitNoteRecordSchema } from '../../visits/visit-records.ts'
import { defineKind } from '../kind.ts'

export const visitNoteKind = defineKind({
	name: 'visit-note',
	version: 1,
	schema: visitNoteRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'amend',
	words: { one: 'note on a visit', many: 'notes on visits' },
})
