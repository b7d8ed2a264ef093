/** That a report or document left. */
import { sendingRecordSchema } from '../../visits/visit-records.ts'
import { defineKind } from '../kind.ts'

export const sendingKind = defineKind({
	name: 'sending',
	version: 1,
	schema: sendingRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'send',
	words: { one: 'note of a sending', many: 'notes of sendings' },
})
