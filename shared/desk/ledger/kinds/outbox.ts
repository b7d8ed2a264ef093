/** A document on its way to one recipient. */
import { outboxItemSchema } from '../../outbox/item.ts'
import { defineKind } from '../kind.ts'

export const outboxKind = defineKind({
	name: 'outbox',
	version: 1,
	schema: outboxItemSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'outbox entry', many: 'outbox entries' },
	thingOf: ({ itemId }) => itemId,
})
