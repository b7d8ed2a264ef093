/** Changes of the foot measures since the last visit: same stance only, by examiner. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeSince, type Limit, stanceOf } from '../findings/change.ts'
import type { Finding } from '../findings/finding.ts'
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
const names = ['lengthMm', 'widthMm', 'girthMm'] as const

/**
 * Length needs 4 mm (same examiner) or 5 mm; width and girth are compared only for the same
 * examiner.
 */
export function footChanges(
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Changes<Measure> {
	const one = (side: Side, measure: Measure): Change | undefined => {
		const { field, same, other } = measures[measure]
		const limit = (then: Visit, examiners: Change['examiners']): Limit => {
			if (stanceOf(visit) !== stanceOf(then))
				return { why: `the feet were measured ${stanceOf(visit)} now and ${stanceOf(then)} then` }
			if (examiners === 'same') return { key: same }
			return other
				? { key: other }
				: {
						why:
							`${examiners === 'different' ? 'another examiner measured then' : 'the examiner was not recorded at both visits'}, ` +
							'and no limit is known for that',
					}
		}
		return changeSince(
			visit,
			earlier,
			(at) => meanOf(at.feet?.[side]?.[field]),
			'mm',
			limit,
			protocol,
		)
	}
	return perSide(
		(side) =>
			Object.fromEntries(
				names.flatMap((measure) => {
					const change = one(side, measure)
					return change ? [[measure, change]] : []
				}),
			) as Changes<Measure>['left'],
	)
}
/** The threshold that a change was judged by. */
export const limitKey = (measure: Measure, change: Change): ThresholdKey =>
	change.examiners === 'same'
		? measures[measure].same
		: (measures[measure].other ?? measures[measure].same)

/** A finding for each real change, and one where stances differ. */
export function changeFindings(changes: Changes<Measure>, protocol: Protocol): Finding[] {
	const findings: Finding[] = bothSides.flatMap((side) =>
		names.flatMap((measure): Finding[] => {
			const change = changes[side][measure]
			if (change?.verdict !== 'real') return []
			const { words, more, less } = measures[measure],
				grew = change.change > 0
			return [
				{
					id: `sizing.change-${measure.slice(0, -2)}.${side}`,
					topic: 'sizing',
					side,
					level: grew ? 'note' : 'caution',
					says:
						`The ${side} ${words} is ${rounded(Math.abs(change.change), 1)} mm ` +
						`${grew ? more : less} than on ${dayInWords(change.since)}: more than measuring ` +
						`error.${grew ? '' : ' Measure again.'}`,
					because: [
						{ measure: 'now', value: rounded(change.now, 1), unit: 'mm' },
						{
							measure: `on ${dayInWords(change.since)}`,
							value: rounded(change.was, 1),
							unit: 'mm',
						},
					],
					basis: protocol.basis('smallest real change', limitKey(measure, change)),
				},
			]
		}),
	)
	const unlike = bothSides
		.flatMap((side) => changes[side].lengthMm ?? [])
		.find((change) => change.why?.includes('measured'))
	if (unlike?.why?.startsWith('the feet'))
		findings.push({
			id: 'sizing.cannot-compare.both',
			topic: 'sizing',
			side: 'both',
			level: 'note',
			says: `Foot length cannot be compared with ${unlike.since}: ${unlike.why}.`,
			because: [{ measure: 'earlier visit', value: unlike.since }],
			basis: {
				rule: 'same stance',
				source: 'Xiong 2009 (n 30): about 3 mm between unloaded and loaded, derived',
				strength: 'cross-sectional',
			},
		})
	return findings
}
