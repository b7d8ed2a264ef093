/** What was done after a document was sent in error. */
import { breachSchema } from '../../outbox/breach.ts'
import { defineKind } from '../kind.ts'

export const breachKind = defineKind({
	name: 'breach',
	version: 1,
	schema: breachSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'note of a sending in error', many: 'notes of sendings in error' },
	thingOf: ({ breachId }) => breachId,
})
