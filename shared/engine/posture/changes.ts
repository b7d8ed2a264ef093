/**
 * Changes since the last visit: only heel rises have published limits; the others are shown, never
 * judged.
 */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeSince, type Limit } from '../findings/change.ts'
import type { Finding } from '../findings/finding.ts'
import { dayInWords } from '../plain/days.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide } from '../visit/sides.ts'
import type { SideOf, Visit } from '../visit/visit.ts'

type Measure = 'fpi' | 'navicularDropMm' | 'heelRises'
type Recorded = SideOf<'posture'> | undefined
const unknown: Limit = { why: 'no published smallest real change was found' }
export const postureMeasures: Record<
	Measure,
	{ title: string; unit: string; of(read: Recorded): number | undefined; limit: Limit }
> = {
	fpi: {
		title: 'foot posture index',
		unit: 'points',
		of: (read) => read?.fpi6?.reduce((sum, one) => sum + one, 0),
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

export function postureChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide(
		(side) =>
			Object.fromEntries(
				measureNames.flatMap((name): [Measure, Change][] => {
					const { of, unit, limit } = postureMeasures[name]
					const change = changeSince(
						visit,
						earlier,
						(at) => of(at.posture?.[side]),
						unit,
						() => limit,
						protocol,
					)
					return change ? [[name, change]] : []
				}),
			) as Changes<Measure>['left'],
	)
}
export function riseFindings(changes: Changes<Measure>, protocol: Protocol): Finding[] {
	return bothSides.flatMap((side): Finding[] => {
		const change = changes[side].heelRises
		if (change?.verdict !== 'real') return []
		return [
			{
				id: `posture.heel-rise-change.${side}`,
				topic: 'posture',
				side,
				level: change.change < 0 ? 'advise' : 'note',
				says:
					`The ${side} leg made ${Math.abs(change.change)} heel rises ` +
					`${change.change < 0 ? 'fewer' : 'more'} than on ${dayInWords(change.since)}: ` +
					'beyond the day-to-day limits, if the cues and the pace were the same.',
				because: [
					{ measure: 'heel rises, now', value: change.now },
					{ measure: `heel rises, ${dayInWords(change.since)}`, value: change.was },
				],
				basis: protocol.basis('change in heel rises', 'posture.riseChange'),
			},
		]
	})
}
