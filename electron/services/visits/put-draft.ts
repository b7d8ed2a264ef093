/** A draft put on the disk: stamped, with who typed what, and with all that a newer version wrote. */
import { randomUUID } from 'node:crypto'
import type { DraftContent } from '../../../shared/contract.ts'
import { putBack } from '../../../shared/desk/ledger/put-back.ts'
import { type Seen, stampChanges } from '../../../shared/desk/outreach/stamps.ts'
import { changedEntries } from '../../../shared/desk/visits/join-typed.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import type { KeptDraft } from './kept-draft.ts'
import type { Amends } from './memory.ts'
import { withTypist } from './typists.ts'

/**
 * A draft is saved every second: its changes stand in the audit trail once per person and this
 * long.
 */
const draftLogMs = 10 * 60_000

/** What was typed into a draft, and in which window. */
interface Typed {
	playerId: string
	content: DraftContent
	amends?: Amends | undefined
	window?: string | undefined
}
interface Put {
	draftId: string
	savedAt: string
	revision: string
}
/** What tells one state of a draft from another, in every installation alike. */
export const revisionOf = ({ value: { seen = {} } }: Pick<KeptDraft, 'value'>): string =>
	revisionSeen(seen)
const revisionSeen = (seen: Seen): string =>
	Object.entries(seen)
		.map(([origin, tick]) => `${origin} ${tick}`)
		.sort()
		.join(', ')

/** The value to be sealed: stamped, and with all that this version does not know of the one before. */
function sealedValue(
	{ playerId, content, amends, window }: Typed,
	before: KeptDraft | undefined,
	typed: { at: string; origin: string; by: string | undefined },
): KeptDraft['value'] {
	const whole = before ? putBack(content, before.content, before.unknown) : content
	const changed = before ? changedEntries(before.content, content) : []
	const typists = withTypist(
		before?.value.typists,
		changed,
		present({ by: typed.by, at: typed.at, window }),
	)
	return {
		...(amends && { amends: { ...amends } }),
		...before?.value,
		...(typists && { typists }),
		playerId,
		...stampChanges(before?.value, whole, typed),
	}
}
/** @param before as it was last saved; undefined for a new draft */
export function putDraft(
	{ drafts, people }: Pick<Memory, 'drafts' | 'people'>,
	{ store, now }: Deps,
	typed: Typed,
	draftId: string = randomUUID(),
	before?: KeptDraft,
): Put {
	const savedAt = now().toISOString()
	const personId = people.atWork?.personId
	const loggedMs = drafts.loggedMs(draftId, personId)
	const isDue = loggedMs === undefined || Math.abs(now().getTime() - loggedMs) > draftLogMs
	const value = sealedValue(typed, before, { at: savedAt, origin: store.origin, by: personId })
	store.together(() => {
		store.saveDraft(draftId, savedAt, value)
		if (isDue)
			store.audit({
				function: drafts.byId.has(draftId) || loggedMs !== undefined ? 'update' : 'create',
				objectRef: `draft:${draftId}`,
				playerId: typed.playerId,
			})
	})
	if (isDue) drafts.logged(draftId, personId, now().getTime())
	drafts.take(draftId, typed, savedAt)
	// where entries of a newer version stand is found again in what is read back
	if (!before?.unknown.length)
		drafts.keep(draftId, { savedAt, value, content: typed.content, unknown: [] })
	return { draftId, savedAt, revision: revisionOf({ value }) }
}
