/** Changes of the foot measures since the last visit: same stance only, by examiner. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeReasons, changeSince, changesBy, type Limit, stanceOf } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import { bothSides, meanOf, perSide, rounded } from '../visit/sides.ts'
import type { Side, SideOf, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

type Measure = 'lengthMm' | 'widthMm' | 'girthMm'
const measures: Record<
	Measure,
	{ field: keyof SideOf<'feet'>; name: string; same: ThresholdKey; other?: ThresholdKey }
> = {
	lengthMm: {
		field: 'heelToToeMm',
		name: 'length',
		same: 'sizing.realLengthSameMm',
		other: 'sizing.realLengthOtherMm',
	},
	widthMm: { field: 'ballWidthMm', name: 'width', same: 'sizing.realWidthMm' },
	girthMm: { field: 'ballGirthMm', name: 'girth', same: 'sizing.realGirthMm' },
}
export const footMeasures = ['lengthMm', 'widthMm', 'girthMm'] as const

/** What a change of a measure is judged by, or why it cannot be. */
function limitOf(
	measure: Measure,
	visit: Visit,
	then: Visit,
	examiners: Change['examiners'],
): Limit {
	const { same, other } = measures[measure]
	if (stanceOf(visit) !== stanceOf(then))
		return { why: state('sizing.unlike-stance', { now: stanceOf(visit) }) }
	if (examiners === 'same') return { key: same }
	return other ? { key: other } : { why: state('sizing.no-limit', { examiners }) }
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
	const { field, name } = measures[measure]
	const grew = change.change > 0
	const byMm = rounded(Math.abs(change.change), 1)
	const params = { side, measure, byMm, since: change.since }
	return findingOf(grew ? state('sizing.grew', params) : state('sizing.shrank', params), {
		id: `sizing.change-${name}.${side}`,
		side,
		level: grew ? 'note' : 'caution',
		because: changeReasons(field, change, side),
		basis: protocol.basis('smallest real change', limitKey(measure, change)),
	})
}
const stanceBasis: Basis = {
	rule: 'same stance',
	source: 'Xiong 2009 (n 30): about 3 mm between unloaded and loaded, derived',
	strength: 'cross-sectional',
}
/** Foot length is kept from comparison by nothing but the stance. */
function unlikeStanceFindings(visit: Visit, changes: Changes<Measure>): Finding[] {
	const unlike = bothSides
		.flatMap((side) => changes[side].lengthMm ?? [])
		.find(({ verdict }) => verdict === 'cannot-compare')
	if (!unlike) return []
	const { since } = unlike
	return [
		findingOf(state('sizing.cannot-compare', { since, now: stanceOf(visit) }), {
			side: 'both',
			level: 'note',
			because: [{ measure: 'earlierVisit', value: since }],
			basis: stanceBasis,
		}),
	]
}
/** A finding for each real change, and one where stances differ. */
export function changeFindings(
	visit: Visit,
	changes: Changes<Measure>,
	protocol: Protocol,
): Finding[] {
	const real = bothSides.flatMap((side) =>
		footMeasures.flatMap((measure) => {
			const change = changes[side][measure]
			return change?.verdict === 'real' ? [realChangeFinding(side, measure, change, protocol)] : []
		}),
	)
	return [...real, ...unlikeStanceFindings(visit, changes)]
}
