/** Whether calf stretching may be put forward at a visit. Common practice, no source. */
import { hasCondition } from '../conditions/query.ts'
import { isHeld } from '../facts/held.ts'
import type { Gate, Kept } from '../findings/assessment.ts'
import type { Condition } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'

/** At its insertion the tendon is pressed in dorsiflexion; a torn calf and a front block are not stretched. */
const against: readonly Condition[] = [
	'achilles-insertional',
	'haglund-deformity',
	'calf-strain',
	'anterior-ankle-impingement',
]
/** Not where exercise, impact or sport is held, nor with what stretching makes worse, on any side. */
export const mayStretchCalf = (visit: Pick<Visit, 'conditions'>, gate: Kept<Gate>): boolean =>
	!(['exercise', 'impact', 'sport'] as const).some((what) => isHeld(gate, what)) &&
	!hasCondition(visit, against)
