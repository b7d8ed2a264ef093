/** A signed visit, as it was signed. */

import { signedVisitRecordSchema } from '../../visits/calls.ts'
import { visitCard } from '../../visits/visit-card.ts'
import { defineKind } from '../kind.ts'
import { visitFrom1To2 } from '../upgrades/visit-1-to-2.ts'
import { visitFrom2To3 } from '../upgrades/visit-2-to-3.ts'

export const visitKind = defineKind({
	name: 'visit',
	version: 3,
	schema: signedVisitRecordSchema,
	upgrades: [visitFrom1To2, visitFrom2To3],
	readsPartly: true,
	mayWrite: ['clinician', 'student', 'owner'],
	travels: { pack: 'player', home: true, share: true },
	chained: true,
	audit: 'sign',
	words: { one: 'signed visit', many: 'signed visits' },
	foundBy: (visit) => {
		const card = visitCard(visit)
		return { about: card.playerId, thing: card.visitId, card }
	},
})
