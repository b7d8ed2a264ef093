/** Drafts: one is open for a player at a time, and saved as it is typed. */
import type { DraftContent, InputOf, OutputOf } from '../../../shared/contract.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type KeptDraft, openKeptDraft } from './kept-draft.ts'
import type { OpenDraft } from './memory.ts'
import { hasNote } from './notes.ts'
import type { OtherWindow } from './presence.ts'
import { putDraft, revisionOf } from './put-draft.ts'
import { insertParts, recheckParts } from './rechecking.ts'
import type { Typists } from './typists.ts'
import { earlierVisits, latest } from './visits.ts'

/** The draft of a player that is open, or a new one. */
export function openDraft(
	memory: Pick<Memory, 'clinic' | 'players' | 'drafts' | 'people'>,
	deps: Deps,
	{ playerId, visitDate, window, recheck }: InputOf<'drafts.open'>,
): OutputOf<'drafts.open'> {
	const { players, drafts } = memory
	const { player } = players.entry(playerId)
	if (players.mergedAway(playerId))
		throw new Refusal(
			'players.merged-into-another',
			'This record was merged into another player. Open that player.',
		)
	const [open] = drafts.of(players.idsOf(playerId))
	const { visits, lacking } = earlierVisits(players, deps, playerId, open?.[1].amends?.visitId)
	const amends = open?.[1].amends
	const beside = {
		earlier: visits,
		...(lacking.length > 0 && { lacking }),
		...(amends && { amends: { visitId: amends.visitId, reason: amends.reason } }),
	}
	if (open) {
		const [draftId] = open
		const kept = needDraft(deps, draftId)
		const { content, savedAt } = kept
		const others = opensHere(memory, deps, draftId, window)
		// a corrected birth date counts at once, as it does when the visit is signed
		const current = { ...content, visit: { ...content.visit, player } }
		const revision = revisionOf(kept)
		return { draft: { draftId, playerId, savedAt, revision, content: current }, others, ...beside }
	}
	if (player.birthDate >= visitDate)
		throw new Refusal(
			'visits.birth-after-visit',
			`The birth date ${player.birthDate} is not before the visit date ${visitDate}. Correct ` +
				`the player's details first.`,
		)
	const content: DraftContent = {
		visit: {
			format: 'lastwright-visit',
			version: 1,
			player,
			visitDate,
			screening: {},
			...(recheck ? recheckParts : insertParts)(memory, deps, { playerId, visitDate }),
		},
		raw: {},
		decisions: noDecisions,
	}
	const { draftId, ...put } = putDraft(memory, deps, { playerId, content })
	const others = opensHere(memory, deps, draftId, window)
	return { draft: { draftId, playerId, ...put, content }, others, ...beside }
}
/** Notes that a window opens the draft. @returns which others have it open */
function opensHere(
	{ drafts, people }: Pick<Memory, 'drafts' | 'people'>,
	{ now }: Deps,
	draftId: string,
	window: string | undefined,
): OtherWindow[] {
	const at = now()
	const { personId = '', name: by = '' } = people.atWork ?? {}
	if (window !== undefined) drafts.presence.looks(draftId, { window, personId, by, at })
	return drafts.presence.others(draftId, window, at)
}
/** A draft, for lists: undefined where it is not on the disk, or cannot be read. */
function storedDraft(deps: Deps, draftId: string): KeptDraft | undefined {
	try {
		return openKeptDraft(deps, draftId)
	} catch (error) {
		if (error instanceof Refusal) return undefined
		throw error
	}
}
/**
 * The entries of a draft, for lists: undefined where it is not on the disk, or cannot be read. Who
 * opens it is told why.
 */
export const storedContent = (deps: Deps, draftId: string): DraftContent | undefined =>
	storedDraft(deps, draftId)?.content
/** Who typed what into a draft, as far as that is known. */
export const storedTypists = (deps: Deps, draftId: string): Typists | undefined =>
	storedDraft(deps, draftId)?.value.typists
/** @throws Refusal where the draft is not on the disk any more, or cannot be read */
export function needDraft(deps: Deps, draftId: string): KeptDraft {
	const draft = openKeptDraft(deps, draftId)
	if (!draft)
		throw new Refusal(
			'visits.draft-is-gone',
			'The draft is gone from the disk. Restore it from a backup.',
		)
	return draft
}
/** The same for signing. @throws Refusal too where entries of a newer version would be left out */
export function draftToSign(deps: Deps, draftId: string): KeptDraft {
	const draft = needDraft(deps, draftId)
	const { unknown } = draft
	if (unknown.length > 0)
		throw new Refusal(
			'visits.newer-entries',
			'This draft holds entries of a newer version of Lastwright, which would be missing from the ' +
				`signed visit: ${unknown.map(({ path }) => path).join(', ')}. They are kept in the draft. ` +
				'Sign it with the newer version.',
		)
	return draft
}
/** @throws Refusal where the draft is not open */
export function knownDraft({ drafts }: Pick<Memory, 'drafts'>, draftId: string): OpenDraft {
	const draft = drafts.byId.get(draftId)
	if (!draft)
		throw new Refusal(
			'visits.draft-not-open',
			'This draft is not open any more: the visit was signed, or opened elsewhere. Go back to ' +
				'the player.',
		)
	return draft
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
			'visits.in-error',
			'This visit was entered in error and cannot be amended. Start a new assessment instead.',
		)
	if (memory.drafts.of(memory.players.idsOf(visit.playerId)).length > 0)
		throw new Refusal(
			'visits.draft-open-already',
			'A draft of this player is open. Sign it first: one draft is open at a time.',
		)
	const content: DraftContent = {
		visit: visit.visit,
		raw: {},
		decisions: { ...visit.decisions, consentNoted: undefined, agreement: undefined },
	}
	const amends = { visitId, reason }
	const { draftId } = putDraft(memory, deps, { playerId: visit.playerId, content, amends })
	return { draftId }
}
