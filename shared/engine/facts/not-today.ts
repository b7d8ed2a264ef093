/** Which limbs are not tested under load today, and why. */
import type { PerSide } from '../findings/compared.ts'
import type { Gate } from '../findings/gate.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { freshInjury } from './acute.ts'
import type { Screened } from './foot-at-risk.ts'
import { holdsOn } from './held.ts'

/** An outcome of this visit says of this limb that tests are no longer held. */
const isCleared = ({ outcomes = [] }: Visit, side: Side): boolean =>
	outcomes.some(
		(outcome) => outcome.lifts.includes('test') && [side, 'both'].includes(outcome.side),
	)

/**
 * Why tests under load wait on each limb: the rules that hold them, else `fresh-injury` where an
 * injury is not settled; empty where they may be done. Severe pain alone holds no test.
 */
export const notToday = (
	visit: Visit,
	screened: Screened,
	gate: Gate,
	protocol: Protocol,
): PerSide<string[]> =>
	perSide((side) => {
		const rules = [...new Set(holdsOn(gate, 'test', side).map(({ rule }) => rule))]
		if (rules.length > 0 || isCleared(visit, side)) return rules
		return freshInjury(visit, screened, side, protocol).length > 0 ? ['fresh-injury'] : []
	})
