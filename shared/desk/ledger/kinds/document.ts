/** A document made for the outbox, as its bytes. */
import { documentRecordSchema } from '../../visits/visit-records.ts'
import { defineKind } from '../kind.ts'

export const documentKind = defineKind({
	name: 'document',
	version: 1,
	schema: documentRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'document', many: 'documents' },
})
