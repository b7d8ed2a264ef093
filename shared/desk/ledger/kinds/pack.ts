/** A pack that went out, or one that came home. */
import { packRecordSchema } from '../../outreach/pack-records.ts'
import { defineKind } from '../kind.ts'
import { packFrom1To2 } from '../upgrades/pack-1-to-2.ts'

export const packKind = defineKind({
	name: 'pack',
	version: 2,
	schema: packRecordSchema,
	upgrades: [packFrom1To2],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'export',
	words: { one: 'note of a pack', many: 'notes of packs' },
})
