/**
 * What the clinician marks to be tried or done: decision lines whose ids begin with a mark's name.
 * Pure.
 */
import type { DraftContent } from '../../../../shared/contract.ts'
import { type Mark, type Marked, markedLines } from '../../../../shared/engine/report/marked.ts'
import type { Decision } from '../../../../shared/engine/visit/decisions.ts'
import { decide } from './decisions.ts'

/** Models to try at most: more is no choice. */
export const mostModels = 3
export const marksOf = (draft: DraftContent, mark: Mark): Decision[] =>
	markedLines(draft.decisions, mark)
export const isMarked = (draft: DraftContent, mark: Mark, id: string): boolean =>
	marksOf(draft, mark).some((line) => line.findingId === `${mark}.${id}`)
/** Marks what is to be printed, or takes the mark off. Marking again renews it. */
export function setMark(
	draft: DraftContent,
	mark: Mark,
	id: string,
	marked: Marked | undefined,
): DraftContent {
	const findingId = `${mark}.${id}`
	const { lines } = draft.decisions
	const line: Decision | undefined =
		marked === undefined ? undefined : { findingId, choice: 'accept', ...marked }
	if (!line) return decide(draft, { lines: lines.filter((other) => other.findingId !== findingId) })
	return decide(draft, {
		lines: lines.some((other) => other.findingId === findingId)
			? lines.map((other) => (other.findingId === findingId ? line : other))
			: [...lines, line],
	})
}
