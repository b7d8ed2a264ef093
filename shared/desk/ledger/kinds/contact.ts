/** An address on record for one player. */
import { contactSchema } from '../../outbox/item.ts'
import { defineKind } from '../kind.ts'

export const contactKind = defineKind({
	name: 'contact',
	version: 1,
	schema: contactSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'no', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'contact', many: 'contacts' },
	thingOf: ({ contactId }) => contactId,
})
