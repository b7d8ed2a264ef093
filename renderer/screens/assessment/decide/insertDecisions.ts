/** What deciding about the elements of an insert does to a draft. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { Decisions, InsertDecision } from '../../../../shared/engine/visit/decisions.ts'
import { bothSides } from '../../../../shared/engine/visit/sides.ts'
import type { Side } from '../../../../shared/engine/visit/visit.ts'
import { decide } from './decisions.ts'

export const footTitle = { left: 'Left foot', right: 'Right foot' }

/** Puts a decision about an element; undefined takes it back. */
export function withElement(
	draft: DraftContent,
	side: Side,
	element: string,
	decision: InsertDecision | undefined,
): DraftContent {
	const decided = draft.decisions.insert ?? {}
	const others = (decided[side] ?? []).filter((other) => other.element !== element)
	const next = decision ? [...others, decision] : others
	const { [side]: _, ...otherSide } = decided
	const insert = next.length > 0 ? { ...otherSide, [side]: next } : otherSide
	return decide(draft, { insert: Object.keys(insert).length > 0 ? insert : undefined })
}
/** The elements that stand of those proposed, as an answer names them: `left.heel-cup`. */
export const keptElements = (
	{ prescription }: Pick<Assessment, 'prescription'>,
	{ insert = {} }: Decisions,
): string[] =>
	bothSides.flatMap((side) => {
		const dropped = (insert[side] ?? [])
			.filter(({ choice }) => choice === 'drop')
			.map(({ element }) => element)
		return prescription.insert[side].elements
			.filter((element) => !dropped.includes(element))
			.map((element) => `${side}.${element}`)
	})
