/** A pack that went out, or one that came home. */
import { packRecordSchema } from '../../outreach/pack-records.ts'
import { defineKind } from '../kind.ts'

export const packKind = defineKind({
	name: 'pack',
	version: 1,
	schema: packRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'export',
	words: { one: 'note of a pack', many: 'notes of packs' },
})
