/** Every condition that can be recorded, once. What it is called stands in words/en. */
import { ankleConditions } from './regions/ankle.table.ts'
import { forefoot } from './regions/forefoot.table.ts'
import { heelAndAchilles } from './regions/heel-and-achilles.table.ts'
import { legAndKnee } from './regions/leg-and-knee.table.ts'
import { midfootAndArch } from './regions/midfoot-and-arch.table.ts'
import { skinAndNails } from './regions/skin-and-nails.table.ts'
import { wholePlayer } from './regions/whole-player.table.ts'
import type { ConditionRow } from './row.ts'

export const registry = {
	...heelAndAchilles,
	...forefoot,
	...midfootAndArch,
	...ankleConditions,
	...legAndKnee,
	...skinAndNails,
	...wholePlayer,
}
export type Registry = typeof registry
/** The list that a visit chooses from, in the order of the table. */
export const conditionNames = Object.keys(registry) as [keyof Registry, ...(keyof Registry)[]]
/** What the table says of a condition. */
export const conditionRow = (condition: keyof Registry): ConditionRow => registry[condition]
/**
 * The warning-sign questions that belong to a condition: paths of the visit, in the order in which
 * they are asked; empty where it has none of its own.
 */
export const questionsOf = (condition: keyof Registry): readonly string[] =>
	conditionRow(condition).opens ?? []
