/** Changes of the foot measures since the last visit: same stance only, by examiner. */

import type { Change, Changes } from '../findings/assessment.ts'
import { changeReasons, changesBy, stanceOf } from '../findings/change.ts'
import { type Finding, findingOf } from '../findings/finding.ts'
import { measureChange, numberIn, realChangeRow } from '../findings/measure-change.ts'
import { need } from '../plain/need.ts'
import type { Basis } from '../protocol/basis.ts'
import type { Protocol, ThresholdKey } from '../protocol/protocol.ts'
import type { footMeasures as recorded } from '../visit/measures/feet.table.ts'
import type { NumberKeys } from '../visit/measures/measure.ts'
import { bothSides, perSide, rounded } from '../visit/sides.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

type Measure = 'lengthMm' | 'widthMm' | 'girthMm'
const measures: Record<Measure, { field: NumberKeys<typeof recorded>; name: string }> = {
	lengthMm: { field: 'heelToToeMm', name: 'length' },
	widthMm: { field: 'ballWidthMm', name: 'width' },
	girthMm: { field: 'ballGirthMm', name: 'girth' },
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
