/** Drafts: one is open for a player at a time, and saved as it is typed. */
import { randomUUID } from 'node:crypto'
import {
	type DraftContent,
	draftContentSchema,
	type InputOf,
	type OutputOf,
} from '../../../shared/contract.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { DraftValue, OpenDraft } from './memory.ts'
import { hasNote } from './notes.ts'
import { earlierVisits, latest } from './visits.ts'

/**
 * A draft is saved every second: its changes stand in the audit trail once per person and this
 * long.
 */
const draftLogMs = 10 * 60_000

/** The draft of a player that is open, or a new one. */
export function openDraft(
	memory: Pick<Memory, 'players' | 'drafts' | 'people'>,
	deps: Deps,
	{ playerId, visitDate }: InputOf<'drafts.open'>,
): OutputOf<'drafts.open'> {
	const { players, drafts } = memory
	const { player } = players.entry(playerId)
	if (players.mergedAway(playerId))
		throw new Refusal('This record was merged into another player. Open that player.')
	const [open] = drafts.of(players.idsOf(playerId))
	const { visits, lacking } = earlierVisits(players, deps, playerId, open?.[1].amends?.visitId)
	const beside = { earlier: visits, ...(lacking.length > 0 && { lacking }) }
	if (open) {
		const [draftId] = open
		const { content, savedAt } = needDraft(deps, draftId)
		// a corrected birth date counts at once, as it does when the visit is signed
		const current = { ...content, visit: { ...content.visit, player } }
		return { draft: { draftId, playerId, savedAt, content: current }, ...beside }
	}
	if (player.birthDate >= visitDate)
		throw new Refusal(
			`The birth date ${player.birthDate} is not before the visit date ${visitDate}. Correct ` +
				`the player's details first.`,
		)
	const content: DraftContent = {
		visit: { format: 'lastwright-visit', version: 1, player, visitDate, screening: {} },
		raw: {},
		decisions: noDecisions,
	}
	const { draftId, savedAt } = putDraft(memory, deps, { playerId, content })
	return { draft: { draftId, playerId, savedAt, content }, ...beside }
}
/** A draft as it was last saved; undefined where it is not on the disk. */
function readDraft(
	{ store }: Deps,
	draftId: string,
): { content: DraftContent; savedAt: string } | undefined {
	const draft = store.draft(draftId)
	if (!draft) return undefined
	const { content } = draft.value as DraftValue
	return { content: draftContentSchema.parse(content), savedAt: draft.at }
}
/** The entries of a draft; undefined where it is not on the disk. */
export const storedContent = (deps: Deps, draftId: string): DraftContent | undefined =>
	readDraft(deps, draftId)?.content

/** @throws Refusal where the draft is not on the disk any more */
export function needDraft(deps: Deps, draftId: string): { content: DraftContent; savedAt: string } {
	const draft = readDraft(deps, draftId)
	if (!draft) throw new Refusal('The draft is gone from the disk. Restore it from a backup.')
	return draft
}
function putDraft(
	{ drafts, people }: Pick<Memory, 'drafts' | 'people'>,
	{ store, now }: Deps,
	value: DraftValue & { content: DraftContent },
	draftId: string = randomUUID(),
): { draftId: string; savedAt: string } {
	const savedAt = now().toISOString()
	const personId = people.atWork?.personId
	const loggedMs = drafts.loggedMs(draftId, personId)
	const isDue = loggedMs === undefined || Math.abs(now().getTime() - loggedMs) > draftLogMs
	store.together(() => {
		store.saveDraft(draftId, savedAt, value)
		if (isDue)
			store.audit({
				function: drafts.byId.has(draftId) || loggedMs !== undefined ? 'update' : 'create',
				objectRef: `draft:${draftId}`,
				playerId: value.playerId,
			})
	})
	if (isDue) drafts.logged(draftId, personId, now().getTime())
	drafts.take(draftId, value, savedAt)
	return { draftId, savedAt }
}
/** @throws Refusal where the draft is not open */
export function knownDraft({ drafts }: Pick<Memory, 'drafts'>, draftId: string): OpenDraft {
	const draft = drafts.byId.get(draftId)
	if (!draft)
		throw new Refusal(
			'This draft is not open any more: the visit was signed, or opened elsewhere. Go back to ' +
				'the player.',
		)
	return draft
}
export function saveDraft(
	memory: Pick<Memory, 'drafts' | 'people'>,
	deps: Deps,
	{ draftId, content }: InputOf<'drafts.save'>,
): OutputOf<'drafts.save'> {
	const { playerId, amends } = knownDraft(memory, draftId)
	const { savedAt } = putDraft(memory, deps, { playerId, content, amends }, draftId)
	return { savedAt }
}
/** A draft that becomes the next version. The signed one is untouched. */
export function amendVisit(
	memory: Pick<Memory, 'players' | 'drafts' | 'people'>,
	deps: Deps,
	{ visitId, reason }: InputOf<'visits.amend'>,
): OutputOf<'visits.amend'> {
	const { visit } = latest(deps, visitId)
	if (hasNote(deps, visitId, 'in-error'))
		throw new Refusal(
			'This visit was entered in error and cannot be amended. Start a new assessment instead.',
		)
	if (memory.drafts.of(memory.players.idsOf(visit.playerId)).length > 0)
		throw new Refusal('A draft of this player is open. Sign it first: one draft is open at a time.')
	const content: DraftContent = {
		visit: visit.visit,
		raw: {},
		decisions: { ...visit.decisions, consentNoted: undefined },
	}
	const amends = { visitId, reason }
	const { draftId } = putDraft(memory, deps, { playerId: visit.playerId, content, amends })
	return { draftId }
}
