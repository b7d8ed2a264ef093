/** A player's season, a plan of it, or a calendar given out. */
import { seasonRecordSchema } from '../../season/season-record.ts'
import { defineKind } from '../kind.ts'
import { seasonFrom1To2 } from '../upgrades/season-1-to-2.ts'
import { seasonFrom2To3 } from '../upgrades/season-2-to-3.ts'

export const seasonKind = defineKind({
	name: 'season',
	version: 3,
	schema: seasonRecordSchema,
	upgrades: [seasonFrom1To2, seasonFrom2To3],
	readsPartly: true,
	mayWrite: ['clinician', 'student', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: true,
	audit: 'create',
	words: { one: 'season', many: 'seasons' },
	// a plan and a calendar are made anew each time
	thingOf: (value) => (value.what === 'season' ? value.playerId : undefined),
})
