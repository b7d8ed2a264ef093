/** Change of the lunge since the last visit, cm and degrees kept apart. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeSince } from '../findings/change.ts'
import type { Finding } from '../findings/finding.ts'
import { dayInWords } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Visit } from '../visit/visit.ts'

type Measure = 'lungeCm' | 'lungeDeg'
export const lungeMeasures = ['lungeCm', 'lungeDeg'] as const
const limits: Record<
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
	limits[measure][examiners === 'different' ? 'other' : 'same']

export function lungeChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide(
		(side) =>
			Object.fromEntries(
				lungeMeasures.flatMap((measure) => {
					const change = changeSince(
						visit,
						earlier,
						(at) => meanOf(at.ankles?.[side]?.[measure]),
						limits[measure].unit,
						(_, examiners) => ({ key: limitKey(measure, examiners) }),
						protocol,
					)
					return change ? [[measure, change]] : []
				}),
			) as Changes<Measure>['left'],
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
		lungeMeasures.flatMap((measure): Finding[] => {
			const change = changes[side][measure]
			if (change?.verdict !== 'real') return []
			const { unit, words } = limits[measure],
				value = (one: number) => ({ value: rounded(one, 1), unit })
			return [
				{
					id: `ankle.change-${measure === 'lungeCm' ? 'cm' : 'deg'}.${side}`,
					topic: 'ankle',
					side,
					level: change.change < 0 ? 'advise' : 'note',
					says:
						`The ${side} ${words} is ${rounded(Math.abs(change.change), 1)} ` +
						`${unit === 'cm' ? 'cm' : 'degrees'} ${change.change < 0 ? 'less' : 'more'} ` +
						`than on ${dayInWords(change.since)}: more than measuring ` +
						`error.${growing && measure === 'lungeCm' ? ' In a growing player compare degrees rather than centimetres.' : ''}`,
					because: [
						{ measure: `${words}, now`, ...value(change.now) },
						{ measure: `${words}, ${dayInWords(change.since)}`, ...value(change.was) },
					],
					basis: protocol.basis(
						'smallest real change of the lunge',
						limitKey(measure, change.examiners),
					),
				},
			]
		}),
	)
}
