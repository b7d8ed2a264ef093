/** What can be bought locally. */
import { shelfSchema } from '../../../engine/visit/shelf.ts'
import { defineKind } from '../kind.ts'
import { shelfFrom1To2 } from '../upgrades/shelf-1-to-2.ts'

export const shelfKind = defineKind({
	name: 'shelf',
	version: 2,
	schema: shelfSchema,
	upgrades: [shelfFrom1To2],
	readsPartly: true,
	mayWrite: ['clinician', 'reception', 'owner'],
	travels: { pack: 'clinic', home: false, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'shelf', many: 'shelves' },
	thingOf: () => 'shelf',
})
