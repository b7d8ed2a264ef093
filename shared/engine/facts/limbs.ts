/** Which limbs are only recorded today: acutely injured, or not to be tested. */
import type { Gate, PlayerFacts } from '../findings/assessment.ts'
import type { Side } from '../visit/visit.ts'
import { isHeld } from './held.ts'

/** What a measuring room is told of the limbs; without it both are tested and compared. */
export interface Limbs {
	facts?: Pick<PlayerFacts, Side>
	gate?: Gate
}
/** Whether what is read of a limb is kept and compared with nothing. */
export const isOnlyRecorded = ({ facts, gate }: Limbs, side: Side): boolean =>
	(facts?.[side].acute.length ?? 0) > 0 || (gate !== undefined && isHeld(gate, 'test', side))
