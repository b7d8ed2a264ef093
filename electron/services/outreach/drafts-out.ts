/** The drafts that travel in a pack, and what a change to them is measured against. */
import type { CarriedDraft, DraftBase } from '../../../shared/desk/outreach/carried.ts'
import { draftDigest } from '../../../shared/desk/outreach/merge.ts'
import { isDamage } from '../../store/records.ts'
import type { Store } from '../../store/store.ts'

/**
 * Drafts as they travel; one that is gone meanwhile is left out.
 * @param left takes the words for each that is damaged and stays here
 */
export const draftsToCarry = (
	store: Store,
	ids: readonly string[],
	left: string[] = [],
): CarriedDraft[] =>
	ids.flatMap((id) => {
		try {
			const draft = store.draft(id)
			return draft ? [{ id, at: draft.at, value: draft.value }] : []
		} catch (error) {
			if (!isDamage(error)) throw error
			left.push(`The draft ${id} is damaged and stays here. All others go.`)
			return []
		}
	})
/** What tells at home whether a draft was changed away. */
export const basesOf = (drafts: readonly CarriedDraft[]): DraftBase[] =>
	drafts.map((draft) => ({ id: draft.id, digest: draftDigest(draft) }))
