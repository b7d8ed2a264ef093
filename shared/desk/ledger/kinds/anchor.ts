/** Binds the records of the first form. */
import { anchorRecordSchema } from '../../records/store-records.ts'
import { defineKind } from '../kind.ts'

export const anchorKind = defineKind({
	name: 'anchor',
	version: 1,
	schema: anchorRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: 'program',
	travels: { pack: 'no', home: false, share: false },
	chained: false,
	audit: 'create',
	words: { one: 'anchor of the first records', many: 'anchors of the first records' },
})
