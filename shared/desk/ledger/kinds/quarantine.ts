/** A record that clashed with one here, kept beside it. */
import { quarantineRecordSchema } from '../../outreach/pack-records.ts'
import { defineKind } from '../kind.ts'

export const quarantineKind = defineKind({
	name: 'quarantine',
	version: 1,
	schema: quarantineRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'merge',
	words: { one: 'record put aside', many: 'records put aside' },
})
