/** Two records shown as one player, or that undone. */
import { mergeRecordSchema } from '../../players/player-record.ts'
import { defineKind } from '../kind.ts'

export const mergeKind = defineKind({
	name: 'merge',
	version: 1,
	schema: mergeRecordSchema,
	upgrades: [],
	readsPartly: false,
	mayWrite: ['clinician', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'merge',
	words: { one: 'join of two players', many: 'joins of players' },
	thingOf: ({ mergeId }) => mergeId,
})
