/** The general questions, one yes or no each, and the conditions recorded in the history. */
import type { Action, ScreeningItem } from '../findings/assessment.ts'
import type { Visit } from '../visit/visit.ts'
import { actionFor, type Screened, sidedId, stateOf } from './conclusions.ts'
import type { FlagRow } from './flag-row.ts'
import { type ConditionRow, conditionRows, flagRows } from './flags.table.ts'

/** Every general question in the order of its table, asked or not. */
export const generalItems = (screened: Screened): ScreeningItem[] =>
	flagRows.map((row) => {
		const answer = screened.answers[row.key]
		return {
			id: `screening.${row.key}`,
			side: 'none',
			state: stateOf(answer),
			action: answer === true ? actionOfFlag(row, screened) : 'proceed',
			says: row.says,
			basis: { rule: 'general warning signs', source: row.source, strength: row.strength },
		}
	})
/** A midfoot on which no weight can be borne does not wait for imaging. */
function actionOfFlag(row: FlagRow, { answers, minor }: Screened): Action {
	if (row.key === 'lisfrancSuspected' && answers.injury?.unableToBearWeightNow === true)
		return 'same-day'
	return actionFor(row, minor)
}

type Recorded = NonNullable<Visit['conditions']>[number]
const rowOf = ({ condition, status }: Recorded): ConditionRow | undefined =>
	conditionRows.find((row) => row.condition === condition && row.statuses.includes(status))
/** The recorded conditions that by themselves call for somebody else. */
export const conditionItems = ({ visit }: Screened): ScreeningItem[] =>
	(visit.conditions ?? []).flatMap((recorded): ScreeningItem[] => {
		const row = rowOf(recorded)
		if (!row) return []
		return [
			{
				id: sidedId(`condition-${row.condition}`, recorded.side),
				side: recorded.side,
				state: 'yes',
				action: row.action,
				says: row.says,
				basis: { rule: 'recorded conditions', source: row.source, strength: row.strength },
			},
		]
	})
