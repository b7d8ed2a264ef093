/** A player's details. */
import { playerRecordSchema } from '../../players/player-record.ts'
import { defineKind } from '../kind.ts'

export const playerKind = defineKind({
	name: 'player',
	version: 1,
	schema: playerRecordSchema,
	upgrades: [],
	readsPartly: true,
	mayWrite: ['clinician', 'student', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'player', many: 'players' },
	thingOf: ({ playerId }) => playerId,
	foundBy: ({ playerId }) => ({ about: playerId }),
})
