/** Change of the lunge since the last visit, cm and degrees kept apart. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changesBy } from '../findings/change.ts'
import { type Finding, reading, sayFinding } from '../findings/finding.ts'
import { measureChange, numberIn, realChangeRow } from '../findings/measure-change.ts'
import { dayInWords } from '../plain/days.ts'
import { need } from '../plain/need.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { ageYears } from '../visit/age.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'

type Measure = 'lungeCm' | 'lungeDeg'
export const lungeMeasures = ['lungeCm', 'lungeDeg'] as const
/** What is compared, in words. */
export const measures: Record<Measure, { unit: string; unitWords: string; words: string }> = {
	lungeCm: { unit: 'cm', unitWords: 'cm', words: 'knee to wall' },
	lungeDeg: { unit: 'deg', unitWords: 'degrees', words: 'lunge angle' },
}
/**
 * The review reports a larger limit for the same examiner; where the examiner is not known the
 * larger one stands.
 */
export const limitKey = (measure: Measure, examiners: Change['examiners']): ThresholdKey =>
	need(realChangeRow(numberIn('ankles', measure).measure, examiners), 'the limit of the lunge')

/** Changes of both lunge measures since the last visit that has them. */
export function lungeChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(lungeMeasures, (measure) =>
			measureChange(numberIn('ankles', measure), side, visit, earlier, protocol),
		),
	)
}
function changeFinding(
	side: Side,
	measure: Measure,
	change: Change,
	growing: boolean,
	protocol: Protocol,
): Finding {
	const { unit, unitWords, words } = measures[measure]
	const since = dayInWords(change.since)
	const less = change.change < 0
	const growingNote =
		growing && measure === 'lungeCm'
			? ' In a growing player compare degrees rather than centimetres.'
			: ''
	return sayFinding({
		topic: 'ankle',
		rule: `change-${unit}`,
		side,
		level: less ? 'advise' : 'note',
		says:
			`The ${side} ${words} is ${rounded(Math.abs(change.change), 1)} ${unitWords} ` +
			`${less ? 'less' : 'more'} than on ${since}: more than measuring error.${growingNote}`,
		because: [
			reading(`${words}, now`, change.now, unit),
			reading(`${words}, ${since}`, change.was, unit),
		],
		basis: protocol.basis('smallest real change of the lunge', limitKey(measure, change.examiners)),
	})
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
			return change?.verdict === 'real'
				? [changeFinding(side, measure, change, growing, protocol)]
				: []
		}),
	)
}
