/** Ankle room: range, symmetry, what stops the motion, and the raise it would wish for. */

import { openGate } from '../facts/held.ts'
import { isOnlyRecorded, type Limbs } from '../facts/limbs.ts'
import type { AnkleResult, AnkleSide, PerSide } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { asymmetryFindings, asymmetryOf } from './asymmetry.ts'
import { changeFindings, lungeChanges } from './changes.ts'
import { liftFindings } from './lifts.ts'
import { comparePairs, demandFindings } from './pairs.ts'
import { proposeRaise, raiseBasis } from './raise.ts'
import { ankleSide, rangeFindings } from './range.ts'
import { ankleWorkings } from './workings.ts'

/** The range of both ankles alone, without what is said of it. @param limbs as `ankle` */
export const ankleSides = (
	visit: Visit,
	protocol: Protocol,
	limbs: Limbs = {},
): PerSide<AnkleSide> =>
	perSide((side) => ankleSide(visit, side, protocol, isOnlyRecorded(limbs, side)))
/**
 * Ankle findings of a visit; cm and degrees are never converted into each other. @param limbs which
 * limbs are acutely injured or must not be tested: those are recorded and compared with nothing
 */
export function ankle(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	limbs: Limbs = {},
): AnkleResult {
	const waits = (side: Side): boolean => isOnlyRecorded(limbs, side)
	const sides = ankleSides(visit, protocol, limbs)
	const difference = asymmetryOf(sides, protocol)
	const raise = proposeRaise(visit, sides, limbs.gate ?? openGate, protocol)
	const pairs = comparePairs(visit, protocol)
	const changes = lungeChanges(visit, earlier, protocol, waits)
	const { asymmetryCm, asymmetryDeg, asymmetry } = difference
	const result = present({
		...sides,
		asymmetryCm,
		asymmetryDeg,
		asymmetry,
		heelRaiseMm: raise?.heelRaiseMm,
		heelRaiseBasis: raise && raiseBasis(raise, protocol),
		offsetMm: raise?.offsetMm,
		pitches: pairs.map(({ pitch }) => pitch),
		changes,
		findings: [
			...bothSides.flatMap((side) => rangeFindings(visit, side, sides[side], protocol)),
			...asymmetryFindings(difference, protocol),
			...liftFindings(visit, protocol),
			...demandFindings(pairs, protocol),
			...changeFindings(visit, changes, protocol),
		],
	})
	return { ...result, workings: ankleWorkings(visit, result, raise, pairs, protocol) }
}
