/**
 * What the recorded conditions ask of a shoe in their own row, and what the clinician asks for one
 * that is not in the list. The footwear room weighs these with its own rules.
 */
import type { Basis, Because } from '../protocol/basis.ts'
import { type Condition, conditions, type Feature } from '../visit/terms.ts'
import type { Visit } from '../visit/visit.ts'
import { type Statement, state } from '../words/statement.ts'
import { conditionReading, type RecordedCondition, recordedConditions } from './query.ts'
import { conditionRow } from './registry.ts'

export interface ConditionWish {
	/** Names the rule, once in a visit: the condition; 'other-condition-1' for one in words. */
	rule: string
	statement: Statement
	seek: readonly Feature[]
	avoid: readonly Feature[]
	because: Because[]
	basis: Basis
	/** What is recorded of it: its status and its pain say how much it weighs. */
	recorded: readonly RecordedCondition[]
}
function wishOf(visit: Visit, condition: Condition): ConditionWish[] {
	const { shoe } = conditionRow(condition)
	if (!shoe) return []
	const { seek, avoid, when, source, strength } = shoe
	const recorded = recordedConditions(visit, [condition], { when })
	if (recorded.length === 0) return []
	const because = recorded.map(conditionReading)
	const statement = state('footwear.condition', { condition })
	const basis: Basis = { rule: condition, source, strength }
	return [{ rule: condition, statement, seek, avoid, because, basis, recorded }]
}
/** Current and recovering ones; the clinician takes back what no longer counts. */
const ownWishes = (visit: Visit): ConditionWish[] =>
	recordedConditions(visit, ['other-condition'])
		.map((recorded, index) => ({ recorded, rule: `other-condition-${index + 1}` }))
		.filter(({ recorded: { seek = [], avoid = [] } }) => seek.length + avoid.length > 0)
		.map(({ recorded, rule }) => {
			const { inWords, seek = [], avoid = [] } = recorded
			const basis: Basis = { rule, source: 'asked for by the clinician', strength: 'clinic' }
			const statement = state('footwear.condition-own', inWords === undefined ? {} : { inWords })
			return {
				rule,
				statement,
				seek,
				avoid,
				because: [conditionReading(recorded)],
				basis,
				recorded: [recorded],
			}
		})
/** One wish for each condition that has any, in the order of the table. */
export const conditionWishes = (visit: Visit): ConditionWish[] => [
	...conditions.flatMap((condition) => wishOf(visit, condition)),
	...ownWishes(visit),
]
