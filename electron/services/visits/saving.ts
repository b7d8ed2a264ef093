/** A draft that several windows have open: saved entry by entry, and looked at for what others typed. */
import type { DraftContent, InputOf, OutputOf } from '../../../shared/contract.ts'
import { joinTyped, sameEntries, type Twice } from '../../../shared/desk/visits/join-typed.ts'
import {
	keepingRestricted,
	seesRestricted,
	withoutRestricted,
} from '../../../shared/desk/visits/restricted.ts'
import { entryAt } from '../../../shared/engine/visit/entry-at.ts'
import type { TypedTwice } from '../../../shared/engine/visit/typed-twice.ts'
import { SealBroken } from '../../store/seal.ts'
import type { PersonEntry } from '../people/memory.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import { knownDraft, needDraft } from './drafts.ts'
import { type KeptDraft, keptDraft } from './kept-draft.ts'
import { putDraft, revisionOf } from './put-draft.ts'
import { pathOf, typistOf } from './typists.ts'

type Needs = Pick<Memory, 'drafts' | 'people' | 'players'>

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
/** What a window sends. */
interface Sent {
	content: DraftContent
	/** what it last knew the others to have; undefined from callers that do not tell */
	base: DraftContent | undefined
	window: string | undefined
}
/**
 * What stands once a window saved: where others changed the draft since the window last knew it,
 * entry by entry; both are kept where both typed.
 * @param kept the draft as it stands, with the player as of now
 * @throws Refusal where what both typed does not go together
 */
function joined(
	{ content, base, window }: Sent,
	kept: KeptDraft,
	theirs: DraftContent,
	{ people }: Needs,
	savedAt: string,
): DraftContent {
	if (!base || sameEntries(base, kept.content)) return content
	const { typists } = kept.value
	const own = (keys: readonly string[]) =>
		window !== undefined && typists?.[pathOf(keys)]?.window === window
	const join = joinTyped({ base, mine: content, theirs }, own)
	if ('problems' in join)
		throw new Refusal(
			'visits.entries-cannot-stand',
			'What was typed here and in another window does not go together. Nothing was changed; your ' +
				'entries are still on this screen.',
			join.problems,
		)
	if (join.twice.length === 0) return join.content
	const mine = { by: people.atWork?.name ?? '', at: savedAt }
	const twice = join.twice.map((found) => {
		const typist = typistOf(typists, found.keys)
		const others = {
			by: people.nameOf(typist?.by ?? null) ?? '',
			at: typist?.at ?? kept.savedAt,
		}
		return found.loser === 'mine' ? lineOf(found, mine, others) : lineOf(found, others, mine)
	})
	return { ...join.content, typedTwice: [...(join.content.typedTwice ?? []), ...twice] }
}
interface By {
	by: string
	at: string
}
const lineOf = ({ keys, other }: Twice, lost: By, stands: By): TypedTwice => ({
	path: pathOf(keys),
	keys,
	is: JSON.stringify(other ?? null),
	...lost,
	standsBy: stands.by,
	standsAt: stands.at,
})
/** Where the other entry was typed anew it stands, and nothing is left to choose. */
function withoutSettled({ typedTwice = [], ...content }: DraftContent): DraftContent {
	const open = typedTwice.filter(
		({ keys, is }) => JSON.stringify(entryAt(content, keys) ?? null) !== is,
	)
	return open.length > 0 ? { ...content, typedTwice: open } : content
}
/** As whoever is at work is shown it. */
const asShown = (content: DraftContent, { people }: Pick<Memory, 'people'>): DraftContent =>
	seesRestricted(roleOf(people.atWork)) ? content : (withoutRestricted(content) as DraftContent)
const roleOf = (person: PersonEntry | undefined) => person?.role ?? 'nobody'

export function saveDraft(
	memory: Needs,
	deps: Deps,
	input: InputOf<'drafts.save'>,
): OutputOf<'drafts.save'> {
	const { draftId, content, window } = input
	const { drafts, people, players } = memory
	const { playerId, amends } = knownDraft(memory, draftId)
	const kept = drafts.kept(draftId) ?? beforeSaving(deps, draftId)
	const sees = seesRestricted(roleOf(people.atWork))
	const at = deps.now()
	const mine = sees ? content : keepingRestricted(content, kept?.content)
	// who is not shown an entry did not take it out
	const base = input.base ?? (kept && !sees ? asShown(kept.content, memory) : undefined)
	const { player } = players.entry(playerId)
	const theirs = kept && { ...kept.content, visit: { ...kept.content.visit, player } }
	const whole = withoutSettled(
		kept && theirs
			? joined({ content: mine, base, window }, kept, theirs, memory, at.toISOString())
			: mine,
	)
	const typed = { playerId, content: whole, amends, window }
	const { savedAt, revision } = putDraft(memory, deps, typed, draftId, kept)
	if (window !== undefined) {
		const looking = { ...whoOf(people), window, at }
		// going on to another step is no entry
		const isEntry = !kept || !sameEntries(whole, kept.content)
		drafts.presence[isEntry ? 'types' : 'looks'](draftId, looking)
	}
	return {
		savedAt,
		revision,
		others: drafts.presence.others(draftId, window, at),
		...(!sameEntries(asShown(whole, memory), content) && { content: whole }),
	}
}
const whoOf = ({ atWork }: Memory['people']) => ({
	personId: atWork?.personId ?? '',
	by: atWork?.name ?? '',
})
/**
 * What others typed since the window last knew the draft, and who else has it open. A person who
 * had it not open here before is noted in the trail.
 */
export function lookAtDraft(
	memory: Needs,
	deps: Deps,
	{ draftId, window, revision, leaves }: InputOf<'drafts.look'>,
): OutputOf<'drafts.look'> {
	const { drafts, people, players } = memory
	const { presence } = drafts
	if (leaves) {
		presence.leaves(draftId, window)
		return { others: [] }
	}
	const open = drafts.byId.get(draftId)
	if (!open) return { others: [], ended: presence.endOf(draftId) }
	const at = deps.now()
	if (presence.looks(draftId, { ...whoOf(people), window, at }))
		deps.store.audit({ function: 'read', objectRef: 'draft', playerId: open.playerId })
	const kept = drafts.kept(draftId) ?? needDraft(deps, draftId)
	const others = presence.others(draftId, window, at)
	const now = revisionOf(kept)
	if (now === revision) return { others, savedAt: kept.savedAt, revision: now }
	const { player } = players.entry(open.playerId)
	const content = { ...kept.content, visit: { ...kept.content.visit, player } }
	return { others, savedAt: kept.savedAt, revision: now, content }
}
