/** Ankle room: range, symmetry, what stops the motion, and an editable heel-raise estimate. */
import type { AnkleResult } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'
import { asymmetryFindings, asymmetryOf } from './asymmetry.ts'
import { changeFindings, lungeChanges } from './changes.ts'
import { liftFindings } from './lifts.ts'
import { comparePairs, demandFindings } from './pairs.ts'
import { proposeRaise, raiseBasis, raiseFindings } from './raise.ts'
import { ankleSide, rangeFindings } from './range.ts'
import { ankleWorkings } from './workings.ts'

/** Ankle findings of a visit; cm and degrees are never converted into each other. */
export function ankle(visit: Visit, earlier: readonly Visit[], protocol: Protocol): AnkleResult {
	const sides = perSide((side) => ankleSide(visit, side, protocol))
	const difference = asymmetryOf(sides, protocol)
	const raise = proposeRaise(visit, sides, protocol)
	const pairs = comparePairs(visit, protocol)
	const changes = lungeChanges(visit, earlier, protocol)
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
			...raiseFindings(visit, raise, protocol),
			...liftFindings(visit, protocol),
			...demandFindings(pairs, protocol),
			...changeFindings(visit, changes, protocol),
		],
	})
	return { ...result, workings: ankleWorkings(visit, result, raise, pairs, protocol) }
}
