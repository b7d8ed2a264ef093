/** A record that clashed with one here, kept beside it. */
import { quarantineRecordSchema } from '../../outreach/pack-records.ts'
import { defineKind } from '../kind.ts'
import { quarantineFrom1To2 } from '../upgrades/quarantine-1-to-2.ts'

export const quarantineKind = defineKind({
	name: 'quarantine',
	version: 2,
	schema: quarantineRecordSchema,
	upgrades: [quarantineFrom1To2],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'merge',
	words: { one: 'record put aside', many: 'records put aside' },
})
