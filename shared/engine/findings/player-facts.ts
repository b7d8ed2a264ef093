/**
 * The player's picture, worked out once from any entry (answers, tests and conditions alike). Rooms
 * read these facts; none asks the visit again for what stands here. Plain data.
 */
import type { Because } from '../protocol/basis.ts'
import type { JointName } from '../visit/shelf.ts'
import type { PairRole, Surface } from '../visit/terms.ts'

/** Why a joint should have no stud under it. */
export interface JointAtRisk {
	joint: JointName
	because: Because[]
}
export interface LimbFacts {
	/**
	 * Why the foot may lose its skin unnoticed (neuropathy, ischaemia, previous or open ulcer, lost
	 * monofilament, absent pulses): empty where nothing says so. Diabetes alone at low risk does not.
	 */
	footAtRisk: Because[]
	/** Why the limb is acutely injured or must not be tested: its lunge is recorded, not compared. */
	acute: Because[]
	jointsAtRisk: JointAtRisk[]
	/** Operated and not cleared by the surgeon. */
	unclearedSurgery: boolean
}
export interface PlayerFacts {
	minor: boolean
	/** Completed years on the day of the visit. */
	years: number
	/** Roles in which this player needs footwear, in the order in which they are read. */
	roles: readonly PairRole[]
	/** Grounds played on, as recorded. */
	grounds: readonly Surface[]
	/** How much may be bought; absent where it was not asked. */
	means?: 'one-pair' | 'one-at-a-time' | 'free'
	left: LimbFacts
	right: LimbFacts
}
