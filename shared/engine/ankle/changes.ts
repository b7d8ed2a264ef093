/** Change of the lunge since the last visit, cm and degrees kept apart. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeReasons, changeSince, changesBy } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

type Measure = 'lungeCm' | 'lungeDeg'
export const lungeMeasures = ['lungeCm', 'lungeDeg'] as const
/** What is compared, in words, and the smallest real change by examiner. */
export const measures: Record<
	Measure,
	{ unit: string; words: string; same: ThresholdKey; other: ThresholdKey }
> = {
	lungeCm: {
		unit: 'cm',
		words: 'knee to wall',
		same: 'ankle.realCmSame',
		other: 'ankle.realCmOther',
	},
	lungeDeg: {
		unit: 'deg',
		words: 'lunge angle',
		same: 'ankle.realDegSame',
		other: 'ankle.realDegOther',
	},
}
/**
 * The review reports a larger limit for the same examiner; where the examiner is not known the
 * larger one stands.
 */
export const limitKey = (measure: Measure, examiners: Change['examiners']): ThresholdKey =>
	measures[measure][examiners === 'different' ? 'other' : 'same']

/** Changes of both lunge measures since the last visit that has them. */
export function lungeChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(lungeMeasures, (measure) =>
			changeSince(
				visit,
				earlier,
				(at) => meanOf(at.ankles?.[side]?.[measure]),
				measures[measure].unit,
				(_, examiners) => ({ key: limitKey(measure, examiners) }),
				protocol,
			),
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
	const growing =
		ageYears(visit.player.birthDate, visit.visitDate) < protocol.value('posture.adultFromYears')
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
