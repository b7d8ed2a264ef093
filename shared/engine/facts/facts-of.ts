/** The player's picture, worked out once. */
import type { PlayerFacts, PostureResult } from '../findings/assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { isMinor } from './age.ts'

/** The facts of a visit, whichever entry they come from. */
export function factsOf(visit: Visit, _posture: PostureResult, protocol: Protocol): PlayerFacts {
	return {
		minor: isMinor(visit, protocol),
		years: ageYears(visit.player.birthDate, visit.visitDate),
		roles: ['match', 'training'],
		grounds: visit.play?.surfaces ?? [],
		...perSide(() => ({ footAtRisk: [], acute: [], jointsAtRisk: [], unclearedSurgery: false })),
	}
}
