/** What a condition asks of an insert, read off the table: before any visit, for any reader. */
import type { Condition } from '../../visit/terms.ts'
import type { ObjectionRule } from '../../words/en/insert-cautions.ts'
import type { ElementId } from '../../words/en/insert-names.ts'
import { afterSurgery } from '../base.ts'
import { holdingConditions } from '../holding.table.ts'
import { veryMobile } from '../wear-in.ts'
import { elementRows } from './elements.ts'

export interface InsertAsks {
	/** Elements it calls for; alone: whatever else is found, else together with another finding. */
	calls: { element: ElementId; alone: boolean; inBothShoes: boolean }[]
	/** Elements it speaks against; leavesOut: it takes them out; past: its history does too. */
	against: { element: ElementId; rule: ObjectionRule; leavesOut: boolean; past: boolean }[]
	/** That it holds the insert of its limb; past: its history does too. */
	holds: { past: boolean }[]
	/** Cautions said with the device as a whole. */
	withDevice: 'insert.caution-surgery'[]
	/** A softer shell and slower wearing in. */
	gentle: boolean
}
/** What it asks, whatever the state; the sides are those that it is recorded for. */
export function asksOfInsert(condition: Condition): InsertAsks {
	const calls = elementRows.flatMap(({ element, calls: sets }) => {
		const having = sets.flatMap((needs) =>
			needs
				.filter(({ conditions = [] }) => conditions.includes(condition))
				.map(({ eitherSide }) => ({ needs, inBothShoes: eitherSide === true })),
		)
		const [first] = having
		if (!first) return []
		const alone = having.some(({ needs }) =>
			needs.every(({ conditions = [] }) => conditions.includes(condition)),
		)
		return [{ element, alone, inBothShoes: first.inBothShoes }]
	})
	const holding = holdingConditions[condition]
	return {
		calls,
		against: elementRows.flatMap(({ element, against }) =>
			against
				.filter(({ conditions = [] }) => conditions.includes(condition))
				.map(({ rule, leavesOut = false, past = false }) => ({ element, rule, leavesOut, past })),
		),
		holds: holding === undefined ? [] : [{ past: holding === 'ever' }],
		withDevice: condition === afterSurgery.condition ? [afterSurgery.code] : [],
		gentle: veryMobile.includes(condition),
	}
}
