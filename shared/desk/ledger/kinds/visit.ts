/** A signed visit, as it was signed. */

import { signedVisitRecordSchema } from '../../visits/calls.ts'
import { visitCard } from '../../visits/visit-card.ts'
import { defineKind } from '../kind.ts'
import { visitFrom1To2 } from '../upgrades/visit-1-to-2.ts'
import { visitFrom2To3 } from '../upgrades/visit-2-to-3.ts'
import { visitFrom3To4 } from '../upgrades/visit-3-to-4.ts'
import { visitFrom4To5 } from '../upgrades/visit-4-to-5.ts'
import { visitFrom5To6 } from '../upgrades/visit-5-to-6.ts'

export const visitKind = defineKind({
	name: 'visit',
	version: 6,
	schema: signedVisitRecordSchema,
	upgrades: [visitFrom1To2, visitFrom2To3, visitFrom3To4, visitFrom4To5, visitFrom5To6],
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
