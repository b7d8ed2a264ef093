/** Changes of the foot measures since the last visit: same stance only, by examiner. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changesBy } from '../findings/change.ts'
import { type Finding, reading, sayFinding } from '../findings/finding.ts'
import { measureChange, numberIn, realChangeRow } from '../findings/measure-change.ts'
import { dayInWords } from '../plain/days.ts'
import { need } from '../plain/need.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { footMeasures as recorded } from '../visit/measures/feet.table.ts'
import type { NumberKeys } from '../visit/measures/measure.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'

type Measure = 'lengthMm' | 'widthMm' | 'girthMm'
const measures: Record<
	Measure,
	{ field: NumberKeys<typeof recorded>; words: string; more: string; less: string }
> = {
	lengthMm: { field: 'heelToToeMm', words: 'foot', more: 'longer', less: 'shorter' },
	widthMm: { field: 'ballWidthMm', words: 'ball of the foot', more: 'wider', less: 'narrower' },
	girthMm: {
		field: 'ballGirthMm',
		words: 'ball of the foot',
		more: 'larger around',
		less: 'smaller around',
	},
}
export const footMeasures = ['lengthMm', 'widthMm', 'girthMm'] as const

const recordedAs = (measure: Measure) => numberIn('feet', measures[measure].field)
/** Of the same stance; width and girth only where the examiner was the same. */
export function footChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(footMeasures, (measure) =>
			measureChange(recordedAs(measure), side, visit, earlier, protocol),
		),
	)
}
/** The threshold that a change is judged by; that of the same examiner where none is known. */
export function limitKey(measure: Measure, { examiners }: Change): ThresholdKey {
	const { measure: definition } = recordedAs(measure)
	const key = realChangeRow(definition, examiners) ?? realChangeRow(definition, 'same')
	return need(key, 'the smallest real change')
}

function realChangeFinding(
	side: Side,
	measure: Measure,
	change: Change,
	protocol: Protocol,
): Finding {
	const { words, more, less } = measures[measure]
	const since = dayInWords(change.since)
	const grew = change.change > 0
	return sayFinding({
		topic: 'sizing',
		rule: `change-${measure.slice(0, -'Mm'.length)}`,
		side,
		level: grew ? 'note' : 'caution',
		says:
			`The ${side} ${words} is ${rounded(Math.abs(change.change), 1)} mm ` +
			`${grew ? more : less} than on ${since}: more than measuring ` +
			`error.${grew ? '' : ' Measure again.'}`,
		because: [reading('now', change.now, 'mm'), reading(`on ${since}`, change.was, 'mm')],
		basis: protocol.basis('smallest real change', limitKey(measure, change)),
	})
}
/** Foot length is kept from comparison by nothing but the stance. */
function unlikeStanceFindings(changes: Changes<Measure>): Finding[] {
	const unlike = bothSides
		.flatMap((side) => changes[side].lengthMm ?? [])
		.find(({ verdict }) => verdict === 'cannot-compare')
	if (!unlike) return []
	return [
		sayFinding({
			topic: 'sizing',
			rule: 'cannot-compare',
			side: 'both',
			level: 'note',
			says: `Foot length cannot be compared with ${unlike.since}: ${unlike.why}.`,
			because: [{ measure: 'earlier visit', value: unlike.since }],
			basis: {
				rule: 'same stance',
				source: 'Xiong 2009 (n 30): about 3 mm between unloaded and loaded, derived',
				strength: 'cross-sectional',
			},
		}),
	]
}
/** A finding for each real change, and one where stances differ. */
export function changeFindings(changes: Changes<Measure>, protocol: Protocol): Finding[] {
	const real = bothSides.flatMap((side) =>
		footMeasures.flatMap((measure) => {
			const change = changes[side][measure]
			return change?.verdict === 'real' ? [realChangeFinding(side, measure, change, protocol)] : []
		}),
	)
	return [...real, ...unlikeStanceFindings(changes)]
}
