/** The insert of a limb that the gate holds: nothing is proposed until an outcome lifts it. */
import { holdsOn } from '../facts/held.ts'
import type { Gate, Hold, InsertSide, Kept } from '../findings/assessment.ts'
import type { Side } from '../visit/visit.ts'
import { state } from '../words/statement.ts'

/** What ends the holds, each once. */
export const endsOf = (holds: readonly Kept<Hold>[]): Hold['until'][] => [
	...new Set(holds.map(({ until }) => until)),
]
/** The signs behind holds by their names, each once. */
export const signsOf = (holds: readonly Pick<Hold, 'rule'>[]): string[] => [
	...new Set(holds.map(({ rule }) => rule.replace(/^screening\.(condition-)?/, ''))),
]
/** What holds the insert on a side, each rule once; none where nothing does. */
export function heldBy(gate: Gate, side: Side): InsertSide['stoppedBy'] {
	const rules = new Map(holdsOn(gate, 'insert', side).map((hold) => [hold.rule, hold]))
	return [...rules.values()].map(({ rule, until }) => ({
		id: `${rule}.${side}`,
		...state('insert.held-until', { until }),
	}))
}
