/** What can be bought locally. */
import { shelfSchema } from '../../../engine/visit/shelf.ts'
import { defineKind } from '../kind.ts'

export const shelfKind = defineKind({
	name: 'shelf',
	version: 1,
	schema: shelfSchema,
	upgrades: [],
	readsPartly: true,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'shelf', many: 'shelves' },
	thingOf: () => 'shelf',
})
