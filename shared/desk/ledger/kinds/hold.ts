/** That a record must not be destroyed, or may be again. */
import { holdSchema } from '../../records/retention.ts'
import { defineKind } from '../kind.ts'

export const holdKind = defineKind({
	name: 'hold',
	version: 1,
	schema: holdSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'hold', many: 'holds' },
	thingOf: ({ playerId }) => playerId,
})
