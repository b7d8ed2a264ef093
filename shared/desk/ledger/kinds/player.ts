/** A player's details. */
import { playerRecordSchema } from '../../players/player-record.ts'
import { defineKind } from '../kind.ts'
import { playerFrom1To2 } from '../upgrades/player-1-to-2.ts'
import { playerFrom2To3 } from '../upgrades/player-2-to-3.ts'

export const playerKind = defineKind({
	name: 'player',
	version: 3,
	schema: playerRecordSchema,
	upgrades: [playerFrom1To2, playerFrom2To3],
	readsPartly: true,
	mayWrite: ['clinician', 'student', 'reception', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: false,
	audit: 'create',
	words: { one: 'player', many: 'players' },
	thingOf: ({ playerId }) => playerId,
	foundBy: ({ playerId }) => ({ about: playerId }),
})
