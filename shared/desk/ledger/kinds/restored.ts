/** What a restore brought back or kept, and what the owner decided of it. */
import { cameBackSchema } from '../../backups/came-back.ts'
import { defineKind } from '../kind.ts'

export const restoredKind = defineKind({
	name: 'restored',
	version: 1,
	schema: cameBackSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['owner'],
	travels: { pack: 'no', home: false, share: false },
	chained: false,
	audit: 'restore',
	words: { one: 'list after a restore', many: 'lists after restores' },
	thingOf: ({ restoreId }) => restoreId,
})
