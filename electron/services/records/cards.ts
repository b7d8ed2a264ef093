/** Cards: the short forms of records that lists need without opening the records. */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { Store } from '../../store/store.ts'
import type { PlayerValue } from '../players/memory.ts'

export interface VisitCard {
	visitId: string
	playerId: string
	visitDate: string
	signedAt: string
	version: number
	/** whether a student signed it: it then awaits a countersignature */
	student: boolean
}
export function visitCard(visit: SignedVisit): VisitCard {
	return {
		visitId: visit.visitId,
		playerId: visit.playerId,
		visitDate: visit.visit.visitDate,
		signedAt: visit.signedAt,
		version: visit.version ?? 1,
		student: visit.signer?.role === 'student',
	}
}
type WithoutCard = ReturnType<Store['withoutCard']>[number]

/**
 * Makes the cards that records of an earlier version lack, once, from the records themselves.
 * @param damaged takes the words for each record that cannot be read
 */
export function makeCards(store: Store, damaged: string[]): void {
	const missing = store.withoutCard(['player', 'visit', 'report'])
	if (missing.length === 0) return
	store.together(() => {
		const visits = new Map<string, VisitCard>()
		for (const record of missing) {
			try {
				makeCard(store, record, visits)
			} catch {
				damaged.push(
					`Record ${record.id} (${record.kind}) is damaged and cannot be read. All other ` +
						'records are unaffected; restore it from a backup.',
				)
			}
		}
	})
}
/** @param visits the cards of visits made so far: a report is about the visit it follows */
function makeCard(
	store: Store,
	{ id, kind, follows }: WithoutCard,
	visits: Map<string, VisitCard>,
): void {
	if (kind === 'player') {
		const { playerId } = store.read(id).value as PlayerValue
		store.putCard(id, kind, { about: playerId })
	}
	if (kind === 'visit') {
		const card = visitCard(store.read(id).value as SignedVisit)
		visits.set(id, card)
		store.putCard(id, kind, { about: card.playerId, thing: card.visitId, card })
	}
	if (kind === 'report') {
		const visit = visits.get(follows ?? '')
		if (visit) store.putCard(id, kind, { about: visit.playerId, thing: visit.visitId })
	}
}
