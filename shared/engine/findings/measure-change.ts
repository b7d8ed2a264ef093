/**
 * Change of a measure since the last visit that has it, judged by what its definition says of the
 * smallest real change.
 */
import type { Protocol } from '../protocol/protocol.ts'
import {
	numberMeasures,
	type Placed,
	placedIn,
	type Section,
	sections,
	sidesOf,
} from '../visit/measures/catalogue.ts'
import type { NumberKeys, NumberMeasure } from '../visit/measures/measure.ts'
import { measured } from '../visit/measures/value.ts'
import type { Side, Visit } from '../visit/visit.ts'
import { state } from '../words/statement.ts'
import type { Change } from './assessment.ts'
import { changeSince, type Limit, stanceOf } from './change.ts'
import { type MeasureRow, rowOf } from './measure-rows.ts'

type SectionName = keyof typeof sections
/** A number of a section by its key. */
export function numberIn<Name extends SectionName>(
	name: Name,
	key: NumberKeys<(typeof sections)[Name]['measures']>,
): Placed<NumberMeasure> {
	const section: Section = sections[name]
	return placedIn(section).find((placed) => placed.key === key) as Placed<NumberMeasure>
}

/** The row that a change must reach; undefined where none is known for these examiners. */
export function realChangeRow(
	{ realChange }: NumberMeasure,
	examiners: Change['examiners'],
): MeasureRow | undefined {
	const row = realChange === 'none' ? 'none' : realChange[examiners]
	return row === 'none' ? undefined : rowOf(row)
}
function limitOf(
	{ measure, stance }: Placed<NumberMeasure>,
	visit: Visit,
	then: Visit,
	examiners: Change['examiners'],
): Limit {
	if (stance === 'alike' && stanceOf(visit) !== stanceOf(then))
		return { why: state('sizing.unlike-stance', { now: stanceOf(visit) }) }
	const key = realChangeRow(measure, examiners)
	if (key) return { key }
	return {
		why:
			measure.realChange === 'none' || examiners === 'same'
				? state('posture.no-limit')
				: state('sizing.no-limit', { examiners }),
	}
}
/** Undefined where this visit or all earlier ones lack the measure. */
export function measureChange(
	placed: Placed<NumberMeasure>,
	side: Side | undefined,
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): Change | undefined {
	return changeSince(
		visit,
		earlier,
		(at) => measured(at, placed, side),
		placed.measure.unit,
		(then, examiners) => limitOf(placed, visit, then, examiners),
		protocol,
	)
}

/** The change of one measure on one side, or of a measure without sides. */
interface MeasuredChange {
	placed: Placed<NumberMeasure>
	side: Side | undefined
	change: Change
}
/** Every measure that trends, compared with the last visit that has it, in the order of the walk. */
export const changesOfVisit = (
	visit: Visit,
	earlier: readonly Visit[],
	protocol: Protocol,
): MeasuredChange[] =>
	numberMeasures
		.filter(({ measure }) => measure.trend !== 'none')
		.flatMap((placed) =>
			sidesOf(placed).flatMap((side) => {
				const change = measureChange(placed, side, visit, earlier, protocol)
				return change ? [{ placed, side, change }] : []
			}),
		)
