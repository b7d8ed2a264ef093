/** A signed visit, as it was signed. */

import { signedVisitRecordSchema } from '../../visits/calls.ts'
import { visitCard } from '../../visits/visit-card.ts'
import { defineKind } from '../kind.ts'

export const visitKind = defineKind({
	name: 'visit',
	version: 1,
	schema: signedVisitRecordSchema,
	upgrades: [],
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
