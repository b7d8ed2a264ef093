/** A player on the board of a screening day, or where that player was. */
import { squadRecordSchema } from '../../squad/squad-record.ts'
import { defineKind } from '../kind.ts'

export const squadKind = defineKind({
	name: 'squad',
	version: 1,
	schema: squadRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'student', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'entry of a screening day', many: 'entries of screening days' },
})
