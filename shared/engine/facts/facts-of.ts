/** The player's picture, worked out once. */
import { unclearedSurgery } from '../conditions/query.ts'
import type { PerSide, PlayerFacts, ScreeningResult } from '../findings/assessment.ts'
import type { LimbFacts } from '../findings/player-facts.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { acute } from './acute.ts'
import { isMinor } from './age.ts'
import { footAtRisk } from './foot-at-risk.ts'
import { type FirstJoint, jointsAtRisk } from './joint-risks.ts'
import { rolesOf } from './roles.ts'

/** What is worked out before: the answers to the warning-sign questions, and the posture. */
interface Rooms {
	posture: PerSide<FirstJoint>
	screening: Pick<ScreeningResult, 'items' | 'diabeticFoot'>
}
/** The facts of a visit, whichever entry they come from. */
export function factsOf(
	visit: Visit,
	{ posture, screening }: Rooms,
	protocol: Protocol,
): PlayerFacts {
	const limbs = perSide((side): LimbFacts => {
		const atRisk = footAtRisk(visit, screening, side)
		return {
			footAtRisk: atRisk,
			acute: acute(visit, screening, side, protocol),
			jointsAtRisk: jointsAtRisk(visit, posture, side, atRisk),
			unclearedSurgery: unclearedSurgery(visit, { side }).length > 0,
		}
	})
	const atRisk = limbs.left.footAtRisk.length > 0 || limbs.right.footAtRisk.length > 0
	return present({
		minor: isMinor(visit, protocol),
		years: ageYears(visit.player.birthDate, visit.visitDate),
		roles: rolesOf(visit, atRisk),
		grounds: visit.play?.surfaces ?? [],
		means: visit.means,
		...limbs,
	})
}
