/** Changes of the foot measures since the last visit: same stance only, by examiner. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeSince, changesBy, type Limit, stanceOf } from '../findings/change.ts'
import { type Finding, reading, sayFinding } from '../findings/finding.ts'
import { dayInWords } from '../plain/days.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Side, SideOf, Visit } from '../visit/visit.ts'

type Measure = 'lengthMm' | 'widthMm' | 'girthMm'
const measures: Record<
	Measure,
	{
		field: keyof SideOf<'feet'>
		words: string
		more: string
		less: string
		same: ThresholdKey
		other?: ThresholdKey
	}
> = {
	lengthMm: {
		field: 'heelToToeMm',
		words: 'foot',
		more: 'longer',
		less: 'shorter',
		same: 'sizing.realLengthSameMm',
		other: 'sizing.realLengthOtherMm',
	},
	widthMm: {
		field: 'ballWidthMm',
		words: 'ball of the foot',
		more: 'wider',
		less: 'narrower',
		same: 'sizing.realWidthMm',
	},
	girthMm: {
		field: 'ballGirthMm',
		words: 'ball of the foot',
		more: 'larger around',
		less: 'smaller around',
		same: 'sizing.realGirthMm',
	},
}
export const footMeasures = ['lengthMm', 'widthMm', 'girthMm'] as const

const notComparable = {
	different: 'another examiner measured then, and no limit is known for that',
	unknown: 'the examiner was not recorded at both visits, and no limit is known for that',
}
/** What a change of a measure is judged by, or why it cannot be. */
function limitOf(
	measure: Measure,
	visit: Visit,
	then: Visit,
	examiners: Change['examiners'],
): Limit {
	const { same, other } = measures[measure]
	if (stanceOf(visit) !== stanceOf(then))
		return { why: `the feet were measured ${stanceOf(visit)} now and ${stanceOf(then)} then` }
	if (examiners === 'same') return { key: same }
	return other ? { key: other } : { why: notComparable[examiners] }
}
/**
 * Length needs 4 mm (same examiner) or 5 mm; width and girth are compared only for the same
 * examiner.
 */
export function footChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	return perSide((side) =>
		changesBy(footMeasures, (measure) =>
			changeSince(
				visit,
				earlier,
				(at) => meanOf(at.feet?.[side]?.[measures[measure].field]),
				'mm',
				(then, examiners) => limitOf(measure, visit, then, examiners),
				protocol,
			),
		),
	)
}
/** The threshold that a change was judged by. */
export const limitKey = (measure: Measure, change: Change): ThresholdKey =>
	change.examiners === 'same'
		? measures[measure].same
		: (measures[measure].other ?? measures[measure].same)

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
