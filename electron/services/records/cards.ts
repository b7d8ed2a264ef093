/** Cards: the short forms of records that lists need without opening the records. */
import type { SignedVisit } from '../../../shared/contract.ts'
import type { RemakeCard } from '../../store/store.ts'
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
/**
 * What the card of a record of the first versions says, which did not hold it itself: from the record
 * and, for a report, from the visit that it follows.
 */
export const remakeCard: RemakeCard = ({ kind, value, follows }, find) => {
	if (kind === 'player') return { about: (value as PlayerValue).playerId }
	if (kind === 'visit') return cardOfVisit(value as SignedVisit)
	if (kind !== 'report' || follows === undefined) return undefined
	const visit = find(follows)
	if (visit?.kind !== 'visit') return undefined
	const { about, thing } = cardOfVisit(visit.value as SignedVisit)
	return { about, thing }
}
function cardOfVisit(visit: SignedVisit) {
	const card = visitCard(visit)
	return { about: card.playerId, thing: card.visitId, card }
}
