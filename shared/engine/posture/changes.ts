/**
 * Changes since the last visit: only heel rises have published limits; the others are shown, never
 * judged.
 */

import type { Changes } from '../findings/assessment.ts'
import { changesBy } from '../findings/change.ts'
import { type Finding, sayFinding } from '../findings/finding.ts'
import { measureChange, numberIn } from '../findings/measure-change.ts'
import { dayInWords } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import type { Placed } from '../visit/measures/catalogue.ts'
import type { NumberMeasure } from '../visit/measures/measure.ts'
import { bothSides, perSide } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

type Measure = 'fpi' | 'navicularDropMm' | 'heelRises'
export const postureMeasures: Record<Measure, Placed<NumberMeasure>> = {
	fpi: numberIn('posture', 'fpi6'),
	navicularDropMm: numberIn('posture', 'navicularDropMm'),
	heelRises: numberIn('posture', 'heelRises'),
}
export const measureNames = ['fpi', 'navicularDropMm', 'heelRises'] as const

/** Changes of each side since the last visit that has the measure. */
export function postureChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(measureNames, (name) =>
			measureChange(postureMeasures[name], side, visit, earlier, protocol),
		),
	)
}
/** A finding for each real change in heel rises. */
export function riseFindings(changes: Changes<Measure>, protocol: Protocol): Finding[] {
	return bothSides.flatMap((side) => {
		const change = changes[side].heelRises
		if (change?.verdict !== 'real') return []
		const fewer = change.change < 0
		const since = dayInWords(change.since)
		return [
			sayFinding({
				topic: 'posture',
				rule: 'heel-rise-change',
				side,
				level: fewer ? 'advise' : 'note',
				says:
					`The ${side} leg made ${Math.abs(change.change)} heel rises ` +
					`${fewer ? 'fewer' : 'more'} than on ${since}: ` +
					'beyond the day-to-day limits, if the cues and the pace were the same.',
				because: [
					{ measure: 'heel rises, now', value: change.now },
					{ measure: `heel rises, ${since}`, value: change.was },
				],
				basis: protocol.basis('change in heel rises', 'posture.riseChange'),
			}),
		]
	})
}
