/**
 * Changes since the last visit: only heel rises have published limits; the others are shown, never
 * judged.
 */

import type { Changes } from '../findings/assessment.ts'
import { changeReasons, changesBy } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { measureChange, numberIn } from '../findings/measure-change.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Placed } from '../visit/measures/catalogue.ts'
import type { NumberMeasure } from '../visit/measures/measure.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

type Measure = 'fpi' | 'navicularDropMm' | 'heelRises'
export const postureMeasures: Record<Measure, Placed<NumberMeasure>> = {
	fpi: numberIn('posture', 'fpi6'),
	navicularDropMm: numberIn('posture', 'navicularDropMm'),
	heelRises: numberIn('posture', 'heelRises'),
}
export const measureNames = ['fpi', 'navicularDropMm', 'heelRises'] as const

/**
 * Changes of each side since the last visit that has the measure. @param recordedOnly whether the
 * heel rises of a limb are compared with nothing today
 */
export function postureChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	recordedOnly: (side: Side) => boolean,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(measureNames, (name) =>
			name === 'heelRises' && recordedOnly(side)
				? undefined
				: measureChange(postureMeasures[name], side, visit, earlier, protocol),
		),
	)
}
/** A finding for each real change in heel rises. */
export function riseFindings(changes: Changes<Measure>, protocol: Protocol): Finding[] {
	return bothSides.flatMap((side) => {
		const change = changes[side].heelRises
		if (change?.verdict !== 'real') return []
		const { change: by, since } = change
		return [
			findingOf(state('posture.heel-rise-change', { side, by, since }), {
				side,
				level: by < 0 ? 'advise' : 'note',
				because: changeReasons('heelRises', change, side),
				basis: protocol.basis('change in heel rises', 'posture.riseChange'),
			}),
		]
	})
}
