/** What deciding about the elements of an insert does to a draft. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import type { InsertDecision } from '../../../../shared/engine/visit/decisions.ts'
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
