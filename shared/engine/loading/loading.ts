/**
 * The loading room: weekly hours of young players, and the order of size of the forces in a
 * sidestep.
 */
import { isHeld } from '../facts/held.ts'
import type { Gate, LoadingResult } from '../findings/assessment.ts'
import { present } from '../plain/present.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bodySize } from '../visit/body-size.ts'
import type { Visit } from '../visit/visit.ts'
import { forceFinding, peakForces, sidestepForce } from './forces.ts'
import { recoveringBones, returnFindings, returnSteps } from './return.ts'
import { loadWeeks, weekFindings } from './weeks.ts'
import { loadingWorkings } from './workings.ts'
import { organisedToFreeRatio, youthFindings } from './youth.ts'

/** No way back to load is laid out while load itself is held. */
const mayBeLoaded = (gate: Gate): boolean =>
	!(['sport', 'impact', 'exercise'] as const).some((what) => isHeld(gate, what))
/**
 * Youth load rules (associations, not forecasts) and peak sidestep force in newtons where mass is
 * known.
 */
export function loading(visit: Visit, protocol: Protocol, gate: Gate): LoadingResult {
	const { massKg } = bodySize(visit)
	const weeks = visit.play?.weeks && loadWeeks(visit.play.weeks)
	const comesBack = recoveringBones(visit).length > 0 && mayBeLoaded(gate)
	const steps = comesBack ? returnSteps(protocol) : undefined
	return present({
		peakForceN: massKg === undefined ? undefined : sidestepForce(massKg, protocol),
		peakForces: massKg === undefined ? undefined : peakForces(massKg, protocol),
		weeks,
		returnSteps: steps,
		organisedHoursPerWeek: visit.play?.organisedHoursPerWeek,
		organisedToFreeRatio: organisedToFreeRatio(visit),
		findings: [
			...youthFindings(visit, protocol),
			...weekFindings(weeks ?? [], protocol),
			...returnFindings(visit, steps, protocol),
			...(massKg === undefined ? [] : [forceFinding(massKg, protocol)]),
		],
		workings: loadingWorkings(visit, protocol),
	})
}
