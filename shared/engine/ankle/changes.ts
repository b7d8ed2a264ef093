/** Change of the lunge since the last visit, cm and degrees kept apart. */

import { isMinor } from '../facts/age.ts'
import type { Change, Changes } from '../findings/assessment.ts'
import { changeReasons, changesBy } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { measureChange, numberIn, realChangeRow } from '../findings/measure-change.ts'
import { need } from '../plain/need.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

type Measure = 'lungeCm' | 'lungeDeg'
export const lungeMeasures = ['lungeCm', 'lungeDeg'] as const
/** What is compared, in words. */
export const measures: Record<Measure, { unit: string; words: string }> = {
	lungeCm: { unit: 'cm', words: 'knee to wall' },
	lungeDeg: { unit: 'deg', words: 'lunge angle' },
}
/**
 * The review reports a larger limit for the same examiner; where the examiner is not known the
 * larger one stands.
 */
export const limitKey = (measure: Measure, examiners: Change['examiners']): ThresholdKey =>
	need(realChangeRow(numberIn('ankles', measure).measure, examiners), 'the limit of the lunge')

/**
 * Changes of both lunge measures since the last visit that has them. @param waits whether a limb is
 * only recorded today
 */
export function lungeChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
	waits: (side: Side) => boolean,
): Changes<Measure> {
	return perSide((side) =>
		waits(side)
			? {}
			: changesBy(lungeMeasures, (measure) =>
					measureChange(numberIn('ankles', measure), side, visit, earlier, protocol),
				),
	)
}
/** A distance gives way to the angle: where that changed too, and in a growing player. */
function changeFinding(
	side: Side,
	measure: Measure,
	change: Change,
	{ growing, angleChanged }: { growing: boolean; angleChanged: boolean },
	protocol: Protocol,
): Finding {
	const { unit } = measures[measure]
	const { since, examiners } = change
	const params = { side, measure, by: rounded(change.change, 1), since }
	const leads = measure === 'lungeDeg' || !(growing || angleChanged)
	return findingOf(
		leads
			? state('ankle.change', params)
			: state('ankle.change-of-distance', { ...params, growing }),
		{
			id: `ankle.change-${unit}.${side}`,
			side,
			level: change.change < 0 ? 'advise' : 'note',
			because: changeReasons(measure, change, side),
			basis: protocol.basis('smallest real change of the lunge', limitKey(measure, examiners)),
		},
	)
}
/**
 * A finding for each real change. In growing players the distance changes with the limb, so degrees
 * are preferred.
 */
export function changeFindings(
	visit: Visit,
	changes: Changes<Measure>,
	protocol: Protocol,
): Finding[] {
	const growing = isMinor(visit, protocol)
	return bothSides.flatMap((side) =>
		lungeMeasures.flatMap((measure) => {
			const change = changes[side][measure]
			const angleChanged = changes[side].lungeDeg?.verdict === 'real'
			return change?.verdict === 'real'
				? [changeFinding(side, measure, change, { growing, angleChanged }, protocol)]
				: []
		}),
	)
}
