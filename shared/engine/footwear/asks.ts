/** What a condition asks of shoe, lacing and changes, read off the tables of the room. */
import { conditionRow } from '../conditions/registry.ts'
import { riskRows } from '../facts/joint-risks.table.ts'
import type { JointName } from '../visit/shelf.ts'
import type { Condition, Feature } from '../visit/terms.ts'
import { lacingRows } from './lacing.ts'
import { modificationRows } from './modifications.ts'
import { footwearRules } from './rules/rules.ts'
import type { WorkRow } from './work.ts'

/** now: while it is current or recovering; ever: when it is past too. */
type When = 'now' | 'ever'
export interface AskedOfShoe {
	/** The rule by its id. */
	rule: string
	when: When
	/** Only where something measured calls for it as well. */
	together: boolean
	/** Only of players who still grow. */
	growing: boolean
	seek: readonly Feature[]
	avoid: readonly Feature[]
}
export interface AskedOfWork {
	/** Rows that it calls for, by id, and the features that must be sought as well. */
	calledFor: { id: string; withSought: readonly Feature[] }[]
	/** Rows that it asks care with, each with the code of the caution. */
	against: { id: string; code: string }[]
	/** Rows that are not offered with it, by id. */
	never: string[]
}
export interface AsksOfFootwear {
	shoe: AskedOfShoe[]
	lacing: AskedOfWork
	changes: AskedOfWork
	/** Joints that no stud should stand under. */
	joints: { joint: JointName; when: When }[]
}
const askedOf = (rows: readonly WorkRow[], condition: Condition): AskedOfWork => ({
	calledFor: rows
		.filter(({ conditions }) => conditions?.includes(condition))
		.map(({ id, onlyWithSought = [] }) => ({ id, withSought: onlyWithSought })),
	against: rows.flatMap(({ id, against }) =>
		against
			.filter(({ conditions }) => conditions.includes(condition))
			.map(({ code }) => ({ id, code })),
	),
	never: rows.filter(({ never }) => never?.includes(condition)).map(({ id }) => id),
})
/** What the table of conditions asks of a shoe for it. */
function askedInItsRow(condition: Condition): AskedOfShoe[] {
	const { shoe } = conditionRow(condition)
	if (!shoe) return []
	const { when, seek, avoid } = shoe
	return [{ rule: condition, when, together: false, growing: false, seek, avoid }]
}
/**
 * What a condition by itself asks of footwear. What its features ask in turn, such as lacing for a
 * wide fitting, is not followed.
 */
export const asksOfFootwear = (condition: Condition): AsksOfFootwear => ({
	shoe: [
		...footwearRules
			.filter(({ conditions }) => conditions?.includes(condition))
			.map(({ id, when = 'now', together = false, of, seek, avoid }) => ({
				rule: id,
				when,
				together,
				growing: of === 'minors',
				seek,
				avoid,
			})),
		...askedInItsRow(condition),
	],
	lacing: askedOf(lacingRows, condition),
	changes: askedOf(modificationRows, condition),
	joints: riskRows
		.filter(({ conditions }) => conditions.includes(condition))
		.flatMap(({ joints, when }) => joints.map((joint) => ({ joint, when }))),
})
