/** The short form of a signed visit, for lists. */
import { z } from 'zod'
import { measuredPairSchema, pairsMeasured } from '../shelf/learning.ts'
import type { SignedVisit } from './calls.ts'

export const visitCardSchema = z.object({
	visitId: z.string(),
	playerId: z.string(),
	visitDate: z.string(),
	signedAt: z.string(),
	version: z.number(),
	/** whether a student signed it: it then awaits a countersignature */
	student: z.boolean(),
	/** pairs measured on the foot: what the shelf may learn of them */
	measured: z.array(measuredPairSchema).optional(),
})
export type VisitCard = z.infer<typeof visitCardSchema>

export function visitCard(visit: SignedVisit): VisitCard {
	const measured = pairsMeasured(visit.visit, visit.playerId)
	return {
		visitId: visit.visitId,
		playerId: visit.playerId,
		visitDate: visit.visit.visitDate,
		signedAt: visit.signedAt,
		version: visit.version ?? 1,
		student: visit.signer?.role === 'student',
		...(measured.length > 0 && { measured }),
	}
}
