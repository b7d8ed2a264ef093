/** A place that writes records, with the key that its records are signed by. */
import { installationRecordSchema } from '../../records/store-records.ts'
import { defineKind } from '../kind.ts'

export const installationKind = defineKind({
	name: 'installation',
	version: 1,
	schema: installationRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: 'program',
	travels: { pack: 'clinic', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'installation', many: 'installations' },
})
