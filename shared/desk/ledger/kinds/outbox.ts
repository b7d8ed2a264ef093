/** A document on its way to one recipient. */
import { outboxItemSchema } from '../../outbox/item.ts'
import { defineKind } from '../kind.ts'
import { outboxFrom1To2 } from '../upgrades/outbox-1-to-2.ts'

export const outboxKind = defineKind({
	name: 'outbox',
	version: 2,
	schema: outboxItemSchema,
	upgrades: [outboxFrom1To2],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: false, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'outbox entry', many: 'outbox entries' },
	thingOf: ({ itemId }) => itemId,
})
