/** What is typed for the letter and the order, as the draft keeps it. Pure. */
import type { DraftContent } from '../../../../../shared/contract.ts'
import { decide } from '../../decide/decisions.ts'

export type Paper = 'letter' | 'order'
export const paperOf = (
	{ decisions }: DraftContent,
	of: Paper,
): Readonly<Record<string, unknown>> => decisions[of] ?? {}
/** Sets one entry of a paper; undefined takes it out, and the last one the paper with it. */
export function withPaper(
	draft: DraftContent,
	of: Paper,
	field: string,
	value: string | undefined,
): DraftContent {
	const { [field]: _, ...others } = paperOf(draft, of)
	const next = value === undefined ? others : { ...others, [field]: value }
	return decide(draft, { [of]: Object.keys(next).length > 0 ? next : undefined })
}
