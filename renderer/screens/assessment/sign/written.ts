/** What is written on Sign: the parts of the decisions that have no question of their own. Pure. */
import type { DraftContent } from '../../../../shared/contract.ts'
import { readPath, writePath } from '../../../parts/draft-path.ts'
import { decide } from '../decide/decisions.ts'

export type Written = 'agreement' | 'letter' | 'order'
/** What stands at a path within a part. */
export const writtenAt = ({ decisions }: DraftContent, of: Written, path: string): unknown =>
	readPath(decisions[of] ?? {}, path)
/** Puts one entry; undefined takes it out, and the last one the part with it. */
export function withWritten(
	draft: DraftContent,
	of: Written,
	path: string,
	value: unknown,
): DraftContent {
	const next = writePath(draft.decisions[of] ?? {}, path, value)
	return decide(draft, { [of]: Object.keys(next).length > 0 ? next : undefined })
}
