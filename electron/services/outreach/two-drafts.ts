/** Two drafts of one visit that stand side by side after an outreach day: a person decides. */
import { draftContentSchema, type InputOf, type OutputOf } from '../../../shared/contract.ts'
import { readTolerantly } from '../../../shared/desk/ledger/tolerant.ts'
import { joinStampedDrafts } from '../../../shared/desk/outreach/drafts.ts'
import { draftDigest } from '../../../shared/desk/outreach/merge.ts'
import type { Stamp } from '../../../shared/desk/outreach/stamps.ts'
import { present } from '../../../shared/engine/plain/present.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { Refusal } from '../records/refusal.ts'
import type { DraftValue } from '../visits/memory.ts'
import { laterOf, stepOnly } from './drafts-home.ts'
import { packLog } from './pack-log.ts'
import { idOfDigest } from './pack-words.ts'
import { rememberDrafts } from './remembering.ts'
import { writersHere } from './where-from.ts'

interface OpenDraft {
	id: string
	at: string
	value: DraftValue
}
/** @throws Refusal where either is not open any more */
function openDrafts(
	memory: Pick<Memory, 'drafts'>,
	{ store }: Deps,
	ids: readonly string[],
): [OpenDraft, OpenDraft] {
	const read = (id = ''): OpenDraft => {
		const draft = memory.drafts.byId.has(id) ? store.draft(id) : undefined
		if (!draft)
			throw new Refusal('outreach.draft-not-open', 'One of the two drafts is not open any more.')
		return { id, at: draft.at, value: draft.value as DraftValue }
	}
	return [read(ids[0]), read(ids[1])]
}
/**
 * Of two drafts of one player that came of an outreach day the clinician keeps one; which one was
 * put away is in the trail.
 * @throws Refusal where it is not open any more, or is the only one
 */
export function putDraftAway(
	{ drafts, players }: Pick<Memory, 'drafts' | 'players'>,
	deps: Deps,
	{ draftId }: InputOf<'outreach.putDraftAway'>,
): OutputOf<'outreach.putDraftAway'> {
	const draft = drafts.byId.get(draftId)
	if (!draft) throw new Refusal('outreach.draft-not-open', 'This draft is not open any more.')
	if (drafts.of(players.idsOf(draft.playerId)).length < 2)
		throw new Refusal('outreach.only-draft', 'This is the only draft of the player. It is kept.')
	deps.store.together(() => {
		deps.store.dropDraft(draftId)
		deps.store.audit({
			function: 'update',
			objectRef: `draft:${draftId}`,
			playerId: draft.playerId,
			purpose: 'put away after an outreach day',
		})
	})
	drafts.drop(draftId)
	return {}
}
/** The two drafts side by side, field by field where they differ. */
export function compareDrafts(
	memory: Pick<Memory, 'drafts' | 'people'>,
	deps: Deps,
	{ drafts }: InputOf<'outreach.compareDrafts'>,
): OutputOf<'outreach.compareDrafts'> {
	const [first, second] = openDrafts(memory, deps, drafts)
	const [ofFirst, ofSecond] = [fieldsOf(first.value), fieldsOf(second.value)]
	const paths = [...new Set([...ofFirst.keys(), ...ofSecond.keys()])].filter(
		(path) => ofFirst.get(path)?.is !== ofSecond.get(path)?.is,
	)
	return {
		savedAt: [first.at, second.at],
		places: [placeOf(deps, first), placeOf(deps, second)],
		by: writersOf(memory, deps, [first, second]),
		differences: paths.map((path) => ({
			path,
			first: ofFirst.get(path)?.says ?? '',
			second: ofSecond.get(path)?.says ?? '',
		})),
		asked: askedOf(deps.store, first, second),
	}
}
/**
 * Where a draft was written: the laptop's is one that stands as it came, that was put beside the one
 * here, or that came under a name which no draft here had.
 */
function placeOf(deps: Deps, { id, value }: OpenDraft): 'here' | 'away' {
	const { out, merged } = packLog(deps)
	const taken = new Set(merged.flatMap((file) => file.taken))
	const entries = [...taken].map((entry) => entry.split(' '))
	const asItCame = taken.has(`${id} ${draftDigest({ value })}`)
	const isBeside = entries.some(([, digest = '']) => idOfDigest(digest) === id)
	if (asItCame || isBeside) return 'away'
	const wentOut = out.some(({ drafts = [] }) => drafts.some((draft) => draft.id === id))
	return !wentOut && entries.some(([name]) => name === id) ? 'away' : 'here'
}
/** Who wrote each draft: here by the trail, away whoever made the pack of that laptop. */
function writersOf(
	memory: Pick<Memory, 'people'>,
	deps: Deps,
	drafts: readonly OpenDraft[],
): string[] {
	const here = writersHere(
		memory,
		deps,
		drafts.map(({ id }) => id),
	)
	const { out, merged } = packLog(deps)
	return drafts.map((draft) => {
		if (placeOf(deps, draft) === 'here') return here.get(draft.id) ?? ''
		const back = merged.findLast(({ taken }) => taken.some((entry) => isOf(entry, draft)))
		return out.find(({ packId }) => packId === back?.answers)?.by ?? ''
	})
}
/** Whether what came home is this draft, under its own name or beside the one here. */
function isOf(entry: string, { id }: OpenDraft): boolean {
	const [name = '', digest = ''] = entry.split(' ')
	return name === id || idOfDigest(digest) === id
}
/** What both changed without knowing of each other, with when and where each was typed. */
function askedOf(
	store: Deps['store'],
	first: OpenDraft,
	second: OpenDraft,
): OutputOf<'outreach.compareDrafts'>['asked'] {
	const here = new Set([store.origin, ...store.formerOrigins])
	const typed = (stamp: Stamp | undefined) =>
		stamp && { at: stamp.at, here: here.has(stamp.origin) }
	const { conflicts } = joinStampedDrafts(undefined, first.value, second.value, stepOnly)
	return conflicts.map((conflict) => ({
		path: shownPath(conflict.path),
		...present({ first: typed(conflict.first), second: typed(conflict.second) }),
	}))
}
/** A path as the comparison shows it: most are of the visit. */
const shownPath = (path: string): string => path.replace(/^visit\./, '')
/** What is compared is the whole value; what is shown is its words. */
interface Field {
	is: string
	says: string
}
function fieldsOf({ content: { visit, decisions, raw } }: DraftValue): Map<string, Field> {
	const found = new Map<string, Field>()
	collect(visit, '', found)
	collect(decisions, 'decisions', found)
	collect(raw, 'raw', found)
	return found
}
function collect(value: unknown, path: string, found: Map<string, Field>): void {
	if (value === undefined) return
	if (isGroup(value)) {
		for (const [key, inner] of Object.entries(value))
			collect(inner, path ? `${path}.${key}` : key, found)
		return
	}
	found.set(path, { is: JSON.stringify(value), says: wordsOf(value) })
}
const isGroup = (value: unknown): value is object =>
	typeof value === 'object' && value !== null && !Array.isArray(value)
const wordsOf = (value: unknown): string =>
	Array.isArray(value) ? value.map(itemWords).join('; ') : String(value)
const itemWords = (item: unknown): string =>
	typeof item === 'object' && item !== null
		? Object.values(item)
				.filter((part) => typeof part !== 'object')
				.join(', ')
		: String(item)
/**
 * Two drafts become one: where they differ, `choices` name for each path the draft whose value
 * stands. Without a choice the one that has a value stands.
 * @throws Refusal where a choice is missing, or the values do not go together
 */
export function joinByChoice(
	memory: Pick<Memory, 'drafts'>,
	deps: Deps,
	{ drafts, choices }: InputOf<'outreach.joinDrafts'>,
): OutputOf<'outreach.joinDrafts'> {
	const { store } = deps
	const [first, second] = openDrafts(memory, deps, drafts)
	if (!isSameVisit(first, second))
		throw new Refusal(
			'outreach.not-two-drafts',
			'These are not two drafts of one visit. Nothing was changed.',
		)
	const joined = joinedDraft(first, second, choices)
	const { playerId } = first.value
	const at = laterOf(first.at, second.at)
	const value = { ...first.value, ...joined }
	store.together(() => {
		store.dropDraft(second.id)
		store.saveDraft(first.id, at, value)
		store.audit({
			function: 'update',
			objectRef: `draft:${first.id}`,
			playerId,
			purpose: 'joined by choice after an outreach day',
		})
	})
	rememberDrafts(memory, deps, [first.id, second.id])
	return {}
}
const isSameVisit = (first: OpenDraft, second: OpenDraft): boolean =>
	first.id !== second.id &&
	first.value.playerId === second.value.playerId &&
	first.value.content.visit.visitDate === second.value.content.visit.visitDate
function joinedDraft(first: OpenDraft, second: OpenDraft, choices: Record<string, string>) {
	const sideOf = new Map([
		[first.id, 'first'],
		[second.id, 'second'],
	] as const)
	const chosen = (path: string) => sideOf.get(choices[path] ?? '')
	const { conflicts, ...joined } = joinStampedDrafts(
		undefined,
		first.value,
		second.value,
		// measured or not measured is one question: the measure follows the mark
		(path) => stepOnly(path) ?? chosen(shownPath(path)) ?? chosen(`notMeasured.${shownPath(path)}`),
	)
	if (conflicts.length > 0)
		throw new Refusal(
			'outreach.fields-not-chosen',
			'Choose a value for each field that differs. Nothing was changed.',
			conflicts.map(({ path }) => ({ path, message: conflictWords(path) })),
		)
	if (!readTolerantly(draftContentSchema, joined.content, false).ok)
		throw new Refusal(
			'outreach.joined-cannot-stand',
			'The joined draft cannot stand: some values do not go together. Nothing was changed. Go ' +
				'on with one of the two and copy the rest by hand.',
		)
	return joined
}
const conflictWords = (path: string): string =>
	path.startsWith('visit.notMeasured.')
		? 'measured in one and marked as not measured in the other: choose the same draft for both'
		: 'not chosen, given nothing, allowed: the value of one of the two drafts'
