/** An answer to what two places recorded differently. */
import { answerRecordSchema } from '../../outreach/pack-records.ts'
import { defineKind } from '../kind.ts'

export const answerKind = defineKind({
	name: 'answer',
	version: 1,
	schema: answerRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'answer after an outreach day', many: 'answers after outreach days' },
})
