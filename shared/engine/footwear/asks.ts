/** What a condition asks of shoe, lacing and changes, read off the tables of the room. */
import type { JointName } from '../visit/shelf.ts'
import type { Condition, Feature } from '../visit/terms.ts'
import { lacingRows } from './lacing.ts'
import { modificationRows } from './modifications.ts'
import { footwearRules } from './rules/rules.ts'
import { riskRows } from './studs.ts'
import type { WorkRow } from './work.ts'

/** now: while it is current or recovering; ever: when it is past too. */
type When = 'now' | 'ever'
interface AskedOfShoe {
	/** The rule by its id. */
	rule: string
	when: When
	/** Only where something measured calls for it as well. */
	together: boolean
	seek: readonly Feature[]
	avoid: readonly Feature[]
}
interface AskedOfWork {
	/** Rows that it calls for, by id. */
	calledFor: string[]
	/** Rows that it asks care with, each with the code of the caution. */
	against: { id: string; code: string }[]
}
export interface AsksOfFootwear {
	shoe: AskedOfShoe[]
	lacing: AskedOfWork
	changes: AskedOfWork
	/** Joints that no stud should stand under. */
	joints: { joint: JointName; when: When }[]
}
const askedOf = (rows: readonly WorkRow[], condition: Condition): AskedOfWork => ({
	calledFor: rows.filter(({ conditions }) => conditions?.includes(condition)).map(({ id }) => id),
	against: rows.flatMap(({ id, against }) =>
		against
			.filter(({ conditions }) => conditions.includes(condition))
			.map(({ code }) => ({ id, code })),
	),
})
/**
 * What a condition by itself asks of footwear. What its features ask in turn, such as lacing for a
 * wide fitting, is not followed. @internal
 */
export const asksOfFootwear = (condition: Condition): AsksOfFootwear => ({
	shoe: footwearRules
		.filter(({ conditions }) => conditions?.includes(condition))
		.map(({ id, when = 'now', together = false, seek, avoid }) => ({
			rule: id,
			when,
			together,
			seek,
			avoid,
		})),
	lacing: askedOf(lacingRows, condition),
	changes: askedOf(modificationRows, condition),
	joints: riskRows
		.filter(({ conditions }) => conditions.includes(condition))
		.flatMap(({ joints, when }) => joints.map((joint) => ({ joint, when }))),
})
