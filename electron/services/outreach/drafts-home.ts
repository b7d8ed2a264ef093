/** Drafts that come home: taken, kept, closed, put beside, and joined where nothing contradicts. */
import { z } from 'zod'
import { draftContentSchema } from '../../../shared/contract.ts'
import { readTolerantly } from '../../../shared/desk/ledger/tolerant.ts'
import type { CarriedDraft, DraftBase } from '../../../shared/desk/outreach/carried.ts'
import { joinStampedDrafts } from '../../../shared/desk/outreach/drafts.ts'
import { draftDigest, draftStep } from '../../../shared/desk/outreach/merge.ts'
import { seenSchema, stampsSchema } from '../../../shared/desk/outreach/stamps.ts'
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
/** What became of a draft that came, or that came no more. */
export interface DraftNews {
	playerId: string
	visitDate: string
	step: 'begun' | 'goes-on' | 'both' | 'closed' | 'joined'
}
/** A draft that cannot be what it says, and why, as the end of a sentence. */
export interface DraftTrouble {
	draft: CarriedDraft
	because: string
}
export interface DraftsHome {
	apart: Apart[]
	news: DraftNews[]
	troubles: DraftTrouble[]
	/** ids of the drafts that are others now, or gone */
	touched: string[]
}
/** What a draft is measured against. */
interface DraftsKnown {
	/** as they stood when the pack went out */
	bases: readonly DraftBase[]
	/** id and digest of each draft that came home before */
	taken: ReadonlySet<string>
	/** the names of this installation */
	origins: readonly string[]
	/** how many changes made under them stood in what went out */
	changesOut: number
	/** whether a player is here, or came with this file */
	isPlayer: (playerId: string) => boolean
	/** whether a visit of this day is signed here */
	isSigned: (playerId: string, visitDate: string) => boolean
}
/** Where the screen stood is no entry: the first one's place is taken. */
export const stepOnly = (path: string): 'first' | undefined =>
	path === 'step' ? 'first' : undefined
/** The later of two moments, ISO 8601. */
export const laterOf = (first: string, second: string): string =>
	[first, second].sort().at(-1) ?? first
/** What a draft holds at least; what a newer version puts beside stays with it. */
const draftValueSchema = z.looseObject({
	playerId: z.string().min(1).max(80),
	content: z.unknown(),
	amends: z.looseObject({ visitId: z.string(), reason: z.string() }).optional(),
	stamps: stampsSchema.optional(),
	seen: seenSchema.optional(),
})
/** The highest of numbers from 0 on, however many there are. */
export const highest = (numbers: readonly number[]): number =>
	numbers.reduce((most, number) => Math.max(most, number), 0)
/** How many changes made under these names a draft says it knows of. */
export function changesKnown(value: unknown, origins: readonly string[]): number {
	const { stamps = {}, seen = {} } = draftValueSchema.safeParse(value).data ?? {}
	const typed = Object.values(stamps)
		.filter(({ origin }) => origins.includes(origin))
		.map(({ tick }) => tick)
	return highest([...typed, ...origins.map((origin) => seen[origin] ?? 0)])
}

/** Draft by draft, by what it was when the pack went out. */
export function mergeDrafts(
	store: Store,
	coming: readonly CarriedDraft[],
	known: DraftsKnown,
): DraftsHome {
	const base = new Map(known.bases.map((basis) => [basis.id, basis.digest]))
	const home: DraftsHome = { apart: [], news: [], troubles: [], touched: [] }
	for (const draft of coming) {
		const because = draftTrouble(store, draft, known)
		if (because === undefined) takeDraft(store, draft, base.get(draft.id), known.taken, home)
		else home.troubles.push({ draft, because })
	}
	const came = new Set(coming.map(({ id }) => id))
	for (const [id, digest] of base) if (!came.has(id)) closeDraft(store, id, digest, known, home)
	return home
}
function draftTrouble(store: Store, draft: CarriedDraft, known: DraftsKnown): string | undefined {
	const read = draftValueSchema.safeParse(draft.value)
	if (!read.success) {
		const [issue] = read.error.issues
		return `has entries that cannot stand (${issue?.path.join('.')}: ${issue?.message})`
	}
	const { playerId, content } = read.data
	const entries = readTolerantly(draftContentSchema, content, false)
	if (!entries.ok) {
		const [problem] = entries.problems
		return `has entries that cannot stand (${problem?.path}: ${problem?.message})`
	}
	if (changesKnown(draft.value, known.origins) > known.changesOut)
		return 'says that it knows of changes which were made here after the pack went out'
	if (!known.isPlayer(playerId)) return 'is of a player who is not here'
	const own = store.draft(draft.id)
	return own && (own.value as DraftValue).playerId !== playerId
		? 'would take the place of a draft of another player'
		: undefined
}
function takeDraft(
	store: Store,
	draft: CarriedDraft,
	base: string | undefined,
	taken: ReadonlySet<string>,
	home: DraftsHome,
): void {
	const { id, at, value } = draft
	const digest = draftDigest(draft)
	const beside = idOfDigest(digest)
	const own = store.draft(id)
	// a version that stands beside the first one already is the same one
	const known = taken.has(`${id} ${digest}`) || store.draft(beside) !== undefined
	const step = draftStep(own && draftDigest(own), base, digest, known)
	const { playerId, content } = value as DraftValue
	const { visitDate } = content.visit
	if (step === 'take') {
		store.saveDraft(id, at, value)
		home.touched.push(id)
		home.news.push({ playerId, visitDate, step: own ? 'goes-on' : 'begun' })
	}
	if (step !== 'both') return
	store.saveDraft(beside, at, value)
	home.touched.push(beside)
	home.apart.push({ playerId, drafts: [id, beside] })
	home.news.push({ playerId, visitDate, step: 'both' })
}
/** A draft that came no more is closed where its visit is signed; else it stays. */
function closeDraft(
	store: Store,
	id: string,
	base: string,
	{ isSigned }: DraftsKnown,
	home: DraftsHome,
): void {
	const own = store.draft(id)
	if (!own || draftStep(draftDigest(own), base, undefined, false) !== 'drop') return
	const { playerId, content } = own.value as DraftValue
	const { visitDate } = content.visit
	if (!isSigned(playerId, visitDate)) return
	store.dropDraft(id)
	home.touched.push(id)
	home.news.push({ playerId, visitDate, step: 'closed' })
}

interface DraftsJoined {
	joined: DraftNews[]
	open: Apart[]
	/** ids of the drafts that are others now, or gone */
	touched: string[]
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
): DraftsJoined {
	const bases = new Map(wentOut.map((draft) => [draft.id, draft.value]))
	const all = draftsOf(store, playerIds)
	const open: Apart[] = []
	const joined: DraftNews[] = []
	const touched: string[] = []
	for (const playerId of [...playerIds].sort()) {
		const begun = all.filter(
			({ value }) => value.playerId === playerId && value.amends === undefined,
		)
		for (const group of Map.groupBy(begun, visitDateOf).values()) {
			const result = joinGroup(store, group, bases)
			joined.push(...result.joined)
			touched.push(...result.touched)
			open.push(...result.open)
		}
	}
	return { joined, touched, open: [...open, ...stillApart(store, apart, open)] }
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
): DraftsJoined {
	// the draft that went out keeps its name; else the order of the names decides, so that the
	// order of merging does not
	const [first, ...others] = group.toSorted(
		(left, right) =>
			Number(bases.has(right.id)) - Number(bases.has(left.id)) || (left.id < right.id ? -1 : 1),
	)
	if (!first) return { joined: [], open: [], touched: [] }
	const { playerId } = first.value
	const base = (bases.get(first.id) as DraftValue | undefined)?.content
	const open: Apart[] = []
	const joined: DraftNews[] = []
	const touched: string[] = []
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
		touched.push(whole.id, other.id)
		store.audit({
			function: 'update',
			objectRef: `draft:${first.id}`,
			playerId,
			purpose: 'joined after an outreach day',
		})
		joined.push({ playerId, visitDate: whole.value.content.visit.visitDate, step: 'joined' })
	}
	return { joined, open, touched }
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
