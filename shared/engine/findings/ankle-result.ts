/** What the ankle room returns; centimetres and degrees are never turned into each other. */
import type { Basis } from '../protocol/basis.ts'
import type { Changes, PerSide } from './compared.ts'
import type { Finding, Working } from './finding.ts'

export interface AnkleSide {
	lungeCm?: number
	lungeDeg?: number
	kneeStraightDeg?: number
	kneeBentDeg?: number
	/** unknown where not read, or where the limb is only recorded: see `recordedOnly`. */
	band: 'restricted' | 'adequate' | 'unknown'
	/** Whether the reading lies further from the cut-off than its repeat error; false for no band. */
	bandSure: boolean
	/** By what the band was found; absent without one. */
	bandBy?: 'angle' | 'distance' | 'distance-for-stature'
	/** Acutely injured, or not to be tested today: recorded and compared with nothing. */
	recordedOnly?: true
	limitedBy: 'gastrocnemius' | 'soleus-or-capsule' | 'anterior-block' | 'none' | 'unknown'
}
export interface AnkleResult {
	left: AnkleSide
	right: AnkleSide
	asymmetryCm?: number
	asymmetryDeg?: number
	asymmetry: 'none' | 'flag' | 'act' | 'unknown'
	offsetMm?: { min: number; max: number }
	heelRaiseMm?: PerSide<number>
	/** Where the height of the raise comes from. */
	heelRaiseBasis?: Basis
	pitches: PairPitch[]
	changes: Changes<'lungeCm' | 'lungeDeg'>
	findings: Finding[]
	workings: Working[]
}
/**
 * What going from one pair to another asks of the ankle; `changeDeg` is never negative: `to` is the
 * pair that asks more.
 */
export interface PairPitch {
	from: string
	to: string
	fromDeg: number
	toDeg: number
	changeDeg: number
}
