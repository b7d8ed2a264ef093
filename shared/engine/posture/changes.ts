/**
 * Changes since the last visit: only heel rises have published limits; the others are shown, never
 * judged.
 */

import type { Changes } from '../findings/assessment.ts'
import { changeReasons, changeSince, changesBy, type Limit } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { SideOf, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import { fpiOf } from './foot-posture.ts'

type Measure = 'fpi' | 'navicularDropMm' | 'heelRises'
type Recorded = SideOf<'posture'> | undefined
const unknown: Limit = { why: state('posture.no-limit') }
export const postureMeasures: Record<
	Measure,
	{ title: string; unit: string; of(read: Recorded): number | undefined; limit: Limit }
> = {
	fpi: {
		title: 'foot posture index',
		unit: 'points',
		of: (read) => fpiOf(read?.fpi6),
		limit: unknown,
	},
	navicularDropMm: {
		title: 'navicular drop',
		unit: 'mm',
		of: (read) => meanOf(read?.navicularDropMm),
		limit: unknown,
	},
	heelRises: {
		title: 'heel rises',
		unit: 'rises',
		of: (read) => read?.heelRises,
		limit: { key: 'posture.riseChange' },
	},
}
export const measureNames = ['fpi', 'navicularDropMm', 'heelRises'] as const

/** Changes of each side since the last visit that has the measure. */
export function postureChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(measureNames, (name) => {
			const { of, unit, limit } = postureMeasures[name]
			return changeSince(
				visit,
				earlier,
				(at) => of(at.posture?.[side]),
				unit,
				() => limit,
				protocol,
			)
		}),
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
