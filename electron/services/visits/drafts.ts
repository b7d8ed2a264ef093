/** Drafts: one is open for a player at a time, and saved as it is typed. */
import { randomUUID } from 'node:crypto'
import type { DraftContent, InputOf, OutputOf } from '../../../shared/contract.ts'
import { putBack } from '../../../shared/desk/ledger/put-back.ts'
import { stampChanges } from '../../../shared/desk/outreach/stamps.ts'
import { keepingRestricted, seesRestricted } from '../../../shared/desk/visits/restricted.ts'
import { noDecisions } from '../../../shared/engine/visit/decisions.ts'
import { SealBroken } from '../../store/seal.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { type KeptDraft, keptDraft, openKeptDraft } from './kept-draft.ts'
import type { Amends, OpenDraft } from './memory.ts'
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
		const { content, savedAt } = needDraft(deps, draftId)
		// a corrected birth date counts at once, as it does when the visit is signed
		const current = { ...content, visit: { ...content.visit, player } }
		return { draft: { draftId, playerId, savedAt, content: current }, ...beside }
	}
	if (player.birthDate >= visitDate)
		throw new Refusal(
			'visits.birth-after-visit',
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
/**
 * The entries of a draft, for lists: undefined where it is not on the disk, or cannot be read. Who
 * opens it is told why.
 */
export function storedContent(deps: Deps, draftId: string): DraftContent | undefined {
	try {
		return openKeptDraft(deps, draftId)?.content
	} catch (error) {
		if (error instanceof Refusal) return undefined
		throw error
	}
}
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
/** What was typed into a draft. */
interface Typed {
	playerId: string
	content: DraftContent
	amends?: Amends | undefined
}
/** The value to be sealed: stamped, and with all that this version does not know of the one before. */
function sealedValue(
	{ playerId, content, amends }: Typed,
	before: KeptDraft | undefined,
	typed: { at: string; origin: string },
): KeptDraft['value'] {
	const whole = before ? putBack(content, before.content, before.unknown) : content
	return {
		...(amends && { amends: { ...amends } }),
		...before?.value,
		playerId,
		...stampChanges(before?.value, whole, typed),
	}
}
/** @param before as it was last saved; undefined for a new draft */
function putDraft(
	{ drafts, people }: Pick<Memory, 'drafts' | 'people'>,
	{ store, now }: Deps,
	typed: Typed,
	draftId: string = randomUUID(),
	before?: KeptDraft,
): { draftId: string; savedAt: string } {
	const savedAt = now().toISOString()
	const personId = people.atWork?.personId
	const loggedMs = drafts.loggedMs(draftId, personId)
	const isDue = loggedMs === undefined || Math.abs(now().getTime() - loggedMs) > draftLogMs
	const value = sealedValue(typed, before, { at: savedAt, origin: store.origin })
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
	return { draftId, savedAt }
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
export function saveDraft(
	memory: Pick<Memory, 'drafts' | 'people'>,
	deps: Deps,
	{ draftId, content }: InputOf<'drafts.save'>,
): OutputOf<'drafts.save'> {
	const { playerId, amends } = knownDraft(memory, draftId)
	const before = memory.drafts.kept(draftId) ?? beforeSaving(deps, draftId)
	const role = memory.people.atWork?.role ?? 'nobody'
	const whole = seesRestricted(role) ? content : keepingRestricted(content, before?.content)
	const typed = { playerId, content: whole, amends }
	const { savedAt } = putDraft(memory, deps, typed, draftId, before)
	return { savedAt }
}
/**
 * The draft that is about to be saved over; a damaged one is replaced by what stands on the screen.
 * @throws Refusal where it holds what this version cannot read: that would be lost
 */
function beforeSaving(deps: Deps, draftId: string): KeptDraft | undefined {
	try {
		return keptDraft(deps, draftId)
	} catch (error) {
		if (error instanceof SealBroken) return undefined
		throw error
	}
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
		decisions: { ...visit.decisions, consentNoted: undefined },
	}
	const amends = { visitId, reason }
	const { draftId } = putDraft(memory, deps, { playerId: visit.playerId, content, amends })
	return { draftId }
}
