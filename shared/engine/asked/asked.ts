/** Everything that a condition asks, read off the tables of the rooms, whatever the visit. */
import { conditionRow, questionsOf } from '../conditions/registry.ts'
import { type AsksOfFootwear, asksOfFootwear } from '../footwear/asks.ts'
import { asksOfInsert, type InsertAsks } from '../insert/elements/asks.ts'
import type { SeasonAsk } from '../season/problem/condition-asks.table.ts'
import { asksOfSeason } from '../season/problem/condition-asks.ts'
import type { Condition, Exercise } from '../visit/terms.ts'

/** What one condition asks by itself; what its features or other findings ask in turn is not followed. */
export interface Asked extends AsksOfFootwear {
	insert: InsertAsks
	season: readonly SeasonAsk[]
	/** Often used; which, and how much, is the clinician's choice. */
	exercises: readonly Exercise[]
	/** Paths of the warning-sign questions that belong to it, in the order in which they are asked. */
	questions: readonly string[]
	/** Something is said to be careful of. */
	caution: boolean
}
/** What a condition asks of every room. */
export function askedBy(condition: Condition): Asked {
	const { exercises = [], caution } = conditionRow(condition)
	return {
		...asksOfFootwear(condition),
		insert: asksOfInsert(condition),
		season: asksOfSeason(condition),
		exercises,
		questions: questionsOf(condition),
		caution: caution !== undefined,
	}
}
