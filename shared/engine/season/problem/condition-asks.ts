/** What the recorded conditions of a visit ask of its season. */
import { type RecordedCondition, recordedConditions } from '../../conditions/query.ts'
import type { FindingSide } from '../../findings/finding.ts'
import { holdRows } from '../../protocol/holds.table.ts'
import { type Condition, conditions } from '../../visit/terms.ts'
import type { Visit } from '../../visit/visit.ts'
import { conditionAsks, type SeasonAsk } from './condition-asks.table.ts'

type Recorded = Pick<Visit, 'conditions'>

/** Conditions that hold the season while they are current, by the table of the gate. */
const isHolding = (condition: Condition): boolean =>
	holdRows.some(
		({ rule, holds }) =>
			rule === `screening.condition-${condition}` &&
			Object.values(holds).some((whats) => whats.includes('season')),
	)
/** What a condition asks of a season; nothing where neither table has a row for it. */
export const asksOfSeason = (condition: Condition): readonly SeasonAsk[] => [
	...(isHolding(condition) ? [{ ask: 'stop', when: 'current' } as const] : []),
	...(conditionAsks[condition] ?? []),
]
/** The recorded conditions of one state; recovering alone is none of the usual three. */
const ofState = (visit: Recorded, condition: Condition, when: SeasonAsk['when']) =>
	when === 'recovering'
		? recordedConditions(visit, [condition]).filter(({ status }) => status === when)
		: recordedConditions(visit, [condition], { when })
/** The recorded conditions that ask for one thing, in the order of the list of conditions. */
export const thatAsk = (
	visit: Recorded,
	wanted: (ask: SeasonAsk) => boolean,
): RecordedCondition[] =>
	conditions.flatMap((condition) =>
		asksOfSeason(condition)
			.filter(wanted)
			.flatMap(({ when }) => ofState(visit, condition, when)),
	)
/** The side of a finding about conditions; without a side it may be either, and adds none. */
export function sideOf(recorded: readonly RecordedCondition[]): FindingSide {
	const sides = new Set(recorded.map(({ side }) => side).filter((side) => side !== 'none'))
	const [only] = sides
	if (only === undefined) return 'none'
	return sides.size > 1 ? 'both' : only
}
/** The names of conditions, each once. */
export const namesOf = (recorded: readonly RecordedCondition[]): Condition[] => [
	...new Set(recorded.map(({ condition }) => condition)),
]
