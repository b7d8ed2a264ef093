/** Memory after a merge: extended by what was taken in, never read anew. */
import type { Carried } from '../../../shared/desk/outreach/carried.ts'
import { joinFields } from '../../../shared/desk/outreach/heads.ts'
import { playerOf } from '../../../shared/desk/outreach/merge.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { remember } from '../records/remember.ts'
import type { DraftValue } from '../visits/memory.ts'
import { versionsAbout } from './versions.ts'

/**
 * @param added the records that were taken in, in their order
 * @param drafts ids of the drafts that may be others now, or gone
 */
export function rememberMerge(
	memory: Memory,
	deps: Deps,
	added: readonly Carried[],
	drafts: readonly string[],
): void {
	for (const record of added) remember(memory, record as never)
	for (const playerId of new Set(added.flatMap(({ about }) => about ?? []))) {
		if (added.some(({ kind, about }) => kind === 'player' && about === playerId))
			joinPlayer(memory, deps, playerId)
		memory.players.visitsChanged(playerId)
	}
	for (const draftId of new Set(drafts)) rememberDraft(memory, deps, draftId)
}
/** A player changed in two places: what only one of them changed is taken, field by field. */
function joinPlayer({ players, outreach }: Memory, { store }: Deps, playerId: string): void {
	const versions = versionsAbout(store, 'player', playerId)
	const { value, heads } = joinFields(versions, playerOf, outreach.joined)
	const read = playerSchema.safeParse(value)
	const head = heads.at(-1)
	if (read.success && head !== undefined)
		players.takePlayer({ id: head, kind: 'player', value: { playerId, player: read.data } })
}
function rememberDraft({ drafts }: Memory, { store }: Deps, draftId: string): void {
	const draft = store.draft(draftId)
	if (draft) drafts.take(draftId, draft.value as DraftValue, draft.at)
	else drafts.drop(draftId)
}
