/** Drafts that come home: taken, kept, closed, put beside, and joined where nothing contradicts. */
import { draftContentSchema } from '../../../shared/contract.ts'
import { readTolerantly } from '../../../shared/desk/ledger/tolerant.ts'
import type { CarriedDraft, DraftBase } from '../../../shared/desk/outreach/carried.ts'
import { joinStampedDrafts } from '../../../shared/desk/outreach/drafts.ts'
import { draftDigest, draftStep } from '../../../shared/desk/outreach/merge.ts'
import type { Store } from '../../store/store.ts'
import type { DraftValue } from '../visits/memory.ts'
import { idOfDigest } from './pack-words.ts'

/** Two drafts of one visit that stand side by side for a person. */
export interface Apart {
	playerId: string
	drafts: string[]
}
interface KeptDraft {
	id: string
	at: string
	value: DraftValue
}
/** Where the screen stood is no entry: the first one's place is taken. */
export const stepOnly = (path: string): 'first' | undefined =>
	path === 'step' ? 'first' : undefined
/** The later of two moments, ISO 8601. */
export const laterOf = (first: string, second: string): string =>
	[first, second].sort().at(-1) ?? first

/**
 * Draft by draft, by what it was when the pack went out.
 * @param taken id and digest of each draft that came home before
 * @returns those that two places worked at: both stand
 */
export function mergeDrafts(
	store: Store,
	bases: readonly DraftBase[],
	coming: readonly CarriedDraft[],
	taken: ReadonlySet<string>,
): Apart[] {
	const base = new Map(bases.map((basis) => [basis.id, basis.digest]))
	const theirs = new Map(coming.map((draft) => [draft.id, draft]))
	return [...new Set([...base.keys(), ...theirs.keys()])].flatMap((id) => {
		const draft = theirs.get(id)
		if (draft) return takeDraft(store, draft, base.get(id), taken)
		const own = store.draft(id)
		const step = draftStep(own && draftDigest(own), base.get(id), undefined, false)
		if (step === 'drop') store.dropDraft(id)
		return []
	})
}
function takeDraft(
	store: Store,
	draft: CarriedDraft,
	base: string | undefined,
	taken: ReadonlySet<string>,
): Apart[] {
	const { id, at, value } = draft
	const digest = draftDigest(draft)
	const beside = idOfDigest(digest)
	const own = store.draft(id)
	// a version that stands beside the first one already is the same one
	const known = taken.has(`${id} ${digest}`) || store.draft(beside) !== undefined
	const step = draftStep(own && draftDigest(own), base, digest, known)
	if (step === 'take') store.saveDraft(id, at, value)
	if (step !== 'both') return []
	store.saveDraft(beside, at, value)
	return [{ playerId: (value as DraftValue).playerId, drafts: [id, beside] }]
}

/**
 * Drafts of one visit that were worked at in two places become one where no field has two different
 * values; the rest stay side by side for a person.
 * @param wentOut the drafts as they stood when the pack went out
 * @param apart what mergeDrafts() left side by side
 */
export function joinDrafts(
	store: Store,
	playerIds: ReadonlySet<string>,
	wentOut: readonly CarriedDraft[],
	apart: readonly Apart[],
): { joined: number; open: Apart[] } {
	const bases = new Map(wentOut.map((draft) => [draft.id, draft.value]))
	const all = draftsOf(store, playerIds)
	const open: Apart[] = []
	let joined = 0
	for (const playerId of [...playerIds].sort()) {
		const begun = all.filter(
			({ value }) => value.playerId === playerId && value.amends === undefined,
		)
		for (const group of Map.groupBy(begun, visitDateOf).values()) {
			const result = joinGroup(store, group, bases)
			joined += result.joined
			open.push(...result.open)
		}
	}
	return { joined, open: [...open, ...stillApart(store, apart, open)] }
}
const visitDateOf = ({ value }: KeptDraft) => value.content.visit.visitDate
function draftsOf(store: Store, playerIds: ReadonlySet<string>): KeptDraft[] {
	return store.draftIds().flatMap((id) => {
		const draft = store.draft(id)
		if (!draft) return []
		const value = draft.value as DraftValue
		return playerIds.has(value.playerId) ? [{ id, at: draft.at, value }] : []
	})
}
/** The drafts of one visit, joined into the first one as far as nothing contradicts. */
function joinGroup(
	store: Store,
	group: readonly KeptDraft[],
	bases: ReadonlyMap<string, unknown>,
): { joined: number; open: Apart[] } {
	// the draft that went out keeps its name; else the order of the names decides, so that the
	// order of merging does not
	const [first, ...others] = group.toSorted(
		(left, right) =>
			Number(bases.has(right.id)) - Number(bases.has(left.id)) || (left.id < right.id ? -1 : 1),
	)
	if (!first) return { joined: 0, open: [] }
	const { playerId } = first.value
	const base = (bases.get(first.id) as DraftValue | undefined)?.content
	const open: Apart[] = []
	let whole = first
	for (const other of others) {
		const { conflicts, ...join } = joinStampedDrafts(base, whole.value, other.value, stepOnly)
		// entries of a newer version stay with the draft; they are only left out for reading
		const read = readTolerantly(draftContentSchema, join.content, false)
		if (conflicts.length > 0 || !read.ok) {
			open.push({ playerId, drafts: [first.id, other.id] })
			continue
		}
		const at = laterOf(whole.at, other.at)
		const content = join.content as DraftValue['content']
		whole = { id: first.id, at, value: { ...first.value, ...join, content } }
		store.dropDraft(other.id)
		store.saveDraft(whole.id, whole.at, whole.value)
		store.audit({
			function: 'update',
			objectRef: `draft:${first.id}`,
			playerId,
			purpose: 'joined after an outreach day',
		})
	}
	return { joined: others.length - open.length, open }
}
/**
 * Amended visits and drafts of other days that stand twice are not joined: they are shown as they
 * were put.
 */
function stillApart(store: Store, apart: readonly Apart[], open: readonly Apart[]): Apart[] {
	const named = new Set(open.flatMap(({ drafts }) => drafts))
	return apart.filter(
		({ drafts }) =>
			drafts.every((id) => store.draft(id) !== undefined) && !drafts.some((id) => named.has(id)),
	)
}
