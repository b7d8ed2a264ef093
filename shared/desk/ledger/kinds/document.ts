/** A page that was made for somebody or given out: its bytes, and the document they show. */
import { documentRecordSchema } from '../../visits/kept-pages.ts'
import { defineKind } from '../kind.ts'
import { documentFrom1To2 } from '../upgrades/document-1-to-2.ts'

export const documentKind = defineKind({
	name: 'document',
	version: 2,
	schema: documentRecordSchema,
	upgrades: [documentFrom1To2],
	readsPartly: true,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'document', many: 'documents' },
})
