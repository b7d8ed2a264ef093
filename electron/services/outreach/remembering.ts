/** Which drafts are open after a merge: the ones it touched, each as it stands in the store. */
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { draftOutlineSchema } from '../visits/memory.ts'

/** @param draftIds those that may be others now, or gone */
export function rememberDrafts(
	{ drafts }: Pick<Memory, 'drafts'>,
	{ store }: Pick<Deps, 'store'>,
	draftIds: readonly string[],
): void {
	for (const draftId of new Set(draftIds)) {
		const draft = store.draft(draftId)
		const outline = draftOutlineSchema.safeParse(draft?.value)
		if (draft && outline.success) drafts.take(draftId, outline.data, draft.at)
		else drafts.drop(draftId)
	}
}
