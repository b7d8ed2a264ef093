/**
 * Bringing a pack home: union of the records, in one transaction, with counts before and after; and
 * the questions that stay for a person.
 */
import { draftContentSchema, type InputOf, type OutputOf } from '../../../shared/contract.ts'
import type { Carried, CarriedDraft } from '../../../shared/desk/outreach/carried.ts'
import { joinDraftContents } from '../../../shared/desk/outreach/drafts.ts'
import {
	type ConsentVersion,
	contestedConsents,
	type Fork,
	forksOf,
	headsOf,
	joinFields,
	type Version,
} from '../../../shared/desk/outreach/heads.ts'
import {
	countsAgree,
	draftDigest,
	draftStep,
	type MergeCounts,
	playerOf,
	recordDigest,
} from '../../../shared/desk/outreach/merge.ts'
import type { AwayTrail } from '../../../shared/desk/records/away-trail.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { playerSchema } from '../../../shared/engine/visit/visit.ts'
import { readPack } from '../../store/pack-file.ts'
import type { Kind, StoredRecord } from '../../store/store.ts'
import { destroyedLines } from '../backups/retention.ts'
import { fileToRead } from '../clinic/places.ts'
import type { PlayerValue } from '../players/memory.ts'
import { likeness } from '../players/names.ts'
import { type Deps, type DraftValue, Refusal, type State } from '../records/state.ts'
import { idOfDigest, packWords, reload } from './packs.ts'

interface OutValue {
	what: 'out'
	packId: string
	madeAt: string
	by: string
	expires: string
	file: string
	players: { playerId: string; name: string }[]
	counts: Record<string, number>
	/** as they stood when the pack went out; absent in packs of earlier versions */
	drafts?: CarriedDraft[]
}
export interface MergedValue {
	what: 'merged'
	packId: string
	answers?: string | undefined
	at: string
	by: string
	counts: MergeCounts
	receipt: string
	players: string[]
	taken: string[]
	draftsBoth: { playerId: string; name: string; drafts: string[] }[]
	duplicates: {
		playerId: string
		name: string
		like: string
		likeName: string
		why: 'same-person' | 'twin'
	}[]
	quarantined: { record: string; kind: string; says: string }[]
	heldBack: string[]
	/** rows of the laptop's audit trail that came with it; absent before they did */
	trailRows?: number
}
type Merged = OutputOf<'outreach.merge'>
/**
 * A clock that runs this far ahead or behind is said: common practice, no source (practice standard
 * 5.3).
 */
const skewMinutes = 5
class NotKept extends Error {
	readonly result: Merged
	constructor(result: Merged) {
		super('preview')
		this.result = result
	}
}

const packValues = ({ store }: Deps): (OutValue | MergedValue)[] =>
	store.load(['pack']).records.map((record) => record.value as OutValue | MergedValue)
/** What stands under this id, and what came under it, in words. */
function clashWords(here: StoredRecord | undefined, coming: Carried): string {
	return (
		`Record ${coming.id} (${coming.kind}, written ${coming.at}) came with other content ` +
		`than the one that stands here${here ? ` (${here.kind}, written ${here.at})` : ''}. ` +
		'The one here was left as it is; the other is kept beside it. It was altered on the ' +
		'way, or two records share an id by mistake: ask who worked with the laptop.'
	)
}
export async function previewMerge(
	state: State,
	deps: Deps,
	input: InputOf<'outreach.previewMerge'>,
): Promise<OutputOf<'outreach.previewMerge'>> {
	try {
		return await merge(state, deps, input, true)
	} catch (error) {
		if (error instanceof NotKept) return error.result
		throw error
	}
}
/**
 * All or nothing: read and checked whole first, then written in one transaction that ends with its
 * own record.
 */
export const mergePack = (
	state: State,
	deps: Deps,
	input: InputOf<'outreach.merge'>,
): Promise<Merged> => merge(state, deps, input, false)

async function merge(
	state: State,
	deps: Deps,
	{ file, passphrase }: InputOf<'outreach.merge'>,
	onlyLook: boolean,
): Promise<Merged> {
	const { store, now } = deps
	const { manifest, records, drafts, receipt } = await packWords(() =>
		readPack(fileToRead(file), passphrase),
	)
	if (manifest.direction !== 'return')
		throw new Refusal(
			'This is a pack that goes out. To bring work home, make the file for the way back on the ' +
				'laptop.',
		)
	if (manifest.home !== store.origin)
		throw new Refusal(
			'This file belongs to other records: it went out from another clinic or another PC. ' +
				'Nothing was changed.',
		)
	const notices: string[] = []
	const newest =
		records
			.map((record) => record.at)
			.concat(manifest.madeAt)
			.sort()
			.at(-1) ?? manifest.madeAt
	const ahead = Math.round((Date.parse(newest) - now().getTime()) / 60_000)
	if (ahead > skewMinutes)
		notices.push(
			`The clock of the laptop runs ${ahead} minutes ahead of this PC's. The order of the ` +
				'records does not depend on it; check both clocks.',
		)
	const before = new Set(state.players.keys())
	const done = store.together(() => {
		const known = packValues(deps)
		const taken = new Set(known.flatMap((one) => (one.what === 'merged' ? one.taken : [])))
		const again = known.some((one) => one.what === 'merged' && one.packId === manifest.packId)
		const gone = new Set(destroyedLines(store).flatMap((one) => one.recordIds))
		const counts: MergeCounts = {
			in: records.length,
			added: 0,
			already: 0,
			quarantined: 0,
			heldBack: 0,
			before: store.recordCount,
			after: 0,
		}
		const quarantined: MergedValue['quarantined'] = []
		const heldBack = new Set<string>()
		let beside = 0
		for (const record of records) {
			if (gone.has(record.id)) {
				counts.heldBack++
				heldBack.add(record.kind)
				continue
			}
			const here = store.holds(record)
			if (here === 'same') {
				counts.already++
				continue
			}
			if (here === 'no') {
				store.takeIn(record)
				counts.added++
				continue
			}
			counts.quarantined++
			const digest = recordDigest(record)
			const says = clashWords(readable(deps, record.id), record)
			quarantined.push({ record: record.id, kind: record.kind, says })
			if (store.has(idOfDigest(digest))) continue
			store.append({
				id: idOfDigest(digest),
				kind: 'quarantine',
				at: now().toISOString(),
				value: { packId: manifest.packId, of: record.id, says, record: record },
				...(record.about === undefined ? {} : { about: record.about }),
				does: 'merge',
			})
			beside++
		}
		const wentOut = known.find((one) => one.what === 'out' && one.packId === manifest.answers)
		const apart = mergeDrafts(deps, manifest.bases, drafts, taken)
		const { joined, open: both } = joinDrafts(
			deps,
			new Set(drafts.map((draft) => (draft.value as DraftValue).playerId)),
			wentOut?.what === 'out' ? (wentOut.drafts ?? []) : [],
			apart,
		)
		if (joined > 0)
			notices.push(
				`${joined === 1 ? 'A draft' : `${joined} drafts`} worked at in more than one place ` +
					`${joined === 1 ? 'was' : 'were'} joined field by field. No field had two different ` +
					'values.',
			)
		const away = records.flatMap((record) =>
			record.kind === 'trail' ? [record.value as AwayTrail] : [],
		)
		counts.after = store.recordCount - beside
		if (!countsAgree(counts))
			throw new Refusal(
				'The counts before and after do not agree. Nothing was changed. Make the file for the ' +
					'way back again.',
			)
		const came = players(deps, [
			...new Set(
				records.flatMap((record) =>
					record.kind === 'player' && record.about !== undefined ? [record.about] : [],
				),
			),
		])
		const all = new Map([
			...[...state.players].map(([id, { card }]) => [id, card] as const),
			...came.map((one) => [one.card.playerId, one.card] as const),
		])
		const duplicates = came
			.filter((one) => !before.has(one.card.playerId))
			.flatMap(({ card }) =>
				[...all.values()].flatMap((other) => {
					const why = other.playerId === card.playerId ? undefined : likeness(card, other)
					return why
						? [
								{
									playerId: card.playerId,
									name: fullName(card),
									like: other.playerId,
									likeName: fullName(other),
									why,
								},
							]
						: []
				}),
			)
		const at = now().toISOString()
		const value: MergedValue = {
			what: 'merged',
			trailRows: away.reduce((sum, one) => sum + one.rows.length, 0),
			packId: manifest.packId,
			...(manifest.answers === undefined ? {} : { answers: manifest.answers }),
			at,
			by: state.acts().name,
			counts,
			receipt,
			players: came.map((one) => one.card.playerId),
			taken: drafts.map((draft) => `${draft.id} ${draftDigest(draft)}`),
			draftsBoth: both.map((one) => ({
				...one,
				name: all.get(one.playerId)
					? fullName(all.get(one.playerId) as { givenName: string; familyName: string })
					: 'a player',
			})),
			duplicates,
			quarantined,
			heldBack: [...heldBack],
		}
		if (!again) store.append({ kind: 'pack', at, value, does: 'merge' })
		const result: Merged = {
			again,
			madeAt: manifest.madeAt,
			madeBy: manifest.madeBy.name,
			players: manifest.players,
			counts,
			receipt,
			drafts: drafts.length,
			draftsBoth: value.draftsBoth,
			duplicates,
			quarantined,
			heldBack: value.heldBack,
			trailRows: value.trailRows ?? 0,
			notices,
			questions: openQuestions(deps, value.players).length,
		}
		if (onlyLook) throw new NotKept(result)
		return result
	})
	reload(state, deps)
	return done
}
const fullName = ({ givenName, familyName }: { givenName: string; familyName: string }) =>
	`${givenName} ${familyName}`
function readable({ store }: Deps, id: string): StoredRecord | undefined {
	try {
		return store.read(id)
	} catch {
		return undefined
	}
}
function mergeDrafts(
	{ store }: Deps,
	bases: readonly { id: string; digest: string }[],
	coming: readonly { id: string; at: string; value: unknown }[],
	taken: ReadonlySet<string>,
): { playerId: string; drafts: string[] }[] {
	const base = new Map(bases.map((basis) => [basis.id, basis.digest]))
	const both: { playerId: string; drafts: string[] }[] = []
	for (const id of new Set([...base.keys(), ...coming.map((one) => one.id)])) {
		const theirs = coming.find((one) => one.id === id)
		const digest = theirs && draftDigest(theirs)
		const own = store.draft(id)
		const beside = digest === undefined ? undefined : idOfDigest(digest)
		// a version that stands beside the first one already is the same one
		const known =
			digest !== undefined &&
			(taken.has(`${id} ${digest}`) || (beside !== undefined && store.draft(beside) !== undefined))
		const step = draftStep(own && draftDigest(own), base.get(id), digest, known)
		if (step === 'drop') store.dropDraft(id)
		if (step === 'take' && theirs) store.saveDraft(id, theirs.at, theirs.value)
		if (step === 'both' && theirs && beside !== undefined) {
			store.saveDraft(beside, theirs.at, theirs.value)
			both.push({ playerId: (theirs.value as DraftValue).playerId, drafts: [id, beside] })
		}
	}
	return both
}
interface Apart {
	playerId: string
	drafts: string[]
}
const contentOf = (value: unknown) => (value as DraftValue).content
/**
 * Drafts of one visit that were worked at in two places become one where no field has two different
 * values; the rest stay side by side for a person.
 */
function joinDrafts(
	{ store }: Deps,
	playerIds: ReadonlySet<string>,
	wentOut: readonly CarriedDraft[],
	apart: readonly Apart[],
): { joined: number; open: Apart[] } {
	const bases = new Map(wentOut.map((one) => [one.id, one.value]))
	const all = store.draftIds().flatMap((id) => {
		const one = store.draft(id)
		return one && playerIds.has((one.value as DraftValue).playerId)
			? [{ id, at: one.at, value: one.value as DraftValue }]
			: []
	})
	const open: Apart[] = []
	let joined = 0
	for (const playerId of [...playerIds].sort()) {
		const groups = Map.groupBy(
			all.filter((one) => one.value.playerId === playerId && one.value.amends === undefined),
			(one) => one.value.content.visit.visitDate,
		)
		for (const group of groups.values()) {
			// the draft that went out keeps its name; else the order of the names decides, so that the
			// order of merging does not
			const [first, ...others] = group.sort(
				(a, b) => Number(bases.has(b.id)) - Number(bases.has(a.id)) || (a.id < b.id ? -1 : 1),
			)
			if (!first) continue
			let content: unknown = first.value.content
			let at = first.at
			for (const other of others) {
				const join = joinDraftContents(
					contentOf(bases.get(first.id) ?? {}),
					content,
					other.value.content,
					stepOnly,
				)
				const read = draftContentSchema.safeParse(join.value)
				if (join.conflicts.length > 0 || !read.success) {
					open.push({ playerId, drafts: [first.id, other.id] })
					continue
				}
				content = read.data
				at = [at, other.at].sort().at(-1) ?? at
				store.dropDraft(other.id)
				store.saveDraft(first.id, at, { ...first.value, content })
				store.audit({
					function: 'update',
					objectRef: `draft:${first.id}`,
					playerId,
					purpose: 'joined after an outreach day',
				})
				joined++
			}
		}
	}
	// amended visits and drafts of other days that stand twice are not joined: they are shown as
	// before
	const named = new Set(open.flatMap((one) => one.drafts))
	return {
		joined,
		open: [
			...open,
			...apart.filter(
				(one) =>
					one.drafts.every((id) => store.draft(id) !== undefined) &&
					!one.drafts.some((id) => named.has(id)),
			),
		],
	}
}
/** Where the screen stood is no entry: the first one's place is taken. */
const stepOnly = (path: string): 'first' | undefined => (path === 'step' ? 'first' : undefined)
function versions(
	{ store }: Deps,
	kind: Kind,
	playerId: string,
): (StoredRecord & { kind: Kind })[] {
	return store.cardsAbout(kind, playerId).flatMap(({ record }) => {
		const one = readable({ store } as Deps, record)
		return one ? [one] : []
	})
}
function players(deps: Deps, ids: readonly string[]) {
	return ids.flatMap((playerId) => {
		const last = versions(deps, 'player', playerId).at(-1)
		if (!last) return []
		const { player } = last.value as PlayerValue
		return [
			{
				card: {
					playerId,
					givenName: player.givenName,
					familyName: player.familyName,
					birthDate: player.birthDate,
					sex: player.sex,
					openDraft: false,
				},
			},
		]
	})
}
type Question = OutputOf<'outreach.list'>['questions'][number]
/**
 * What two places recorded differently about these players and the clinic, as far as nobody
 * answered it.
 */
export function openQuestions(deps: Deps, playerIds: readonly string[]): Question[] {
	const { store } = deps
	const joined = joinedOf(deps)
	const placeOf = (origin: string) =>
		origin === store.origin ? 'here' : `away (${origin.slice(0, 6) || 'earlier version'})`
	const questions: Question[] = []
	for (const playerId of playerIds) {
		const line = versions(deps, 'player', playerId)
		const newest = line.at(-1)
		const name = newest ? fullName((newest.value as PlayerValue).player) : 'a player'
		const { questions: fields } = joinFields(line, playerOf, joined)
		if (fields.length > 0)
			questions.push({
				what: 'details',
				id: playerId,
				playerId,
				name,
				says: `Details of ${name} were changed in two places.`,
				fields: fields.map((field) => ({
					field: field.field,
					values: field.values.map(({ record, at, origin, value }) => ({
						record,
						at,
						place: placeOf(origin),
						shown: shown(value),
					})),
				})),
			})
		for (const consent of contestedConsents(
			versions(deps, 'consent', playerId) as unknown as ConsentVersion[],
			joined,
		))
			questions.push({
				what: 'consent',
				id: consent.standing,
				playerId,
				name,
				says:
					`Consent of ${name} to ` +
					`${consent.purpose}${consent.recipient ? ` for ${consent.recipient}` : ''} was recorded ` +
					'differently in two places. The stricter one holds until you decide.',
				fields: [
					{
						field: consent.purpose,
						values: consent.records.map(({ record, at, origin, decision }) => ({
							record,
							at,
							place: placeOf(origin),
							shown: decision,
						})),
					},
				],
			})
		for (const fork of forksOf(
			[...versions(deps, 'season', playerId), ...versions(deps, 'visit', playerId)],
			joined,
		))
			questions.push(forkQuestion(fork, name, placeOf, playerId))
	}
	for (const fork of forksOf(
		store.load(['clinic', 'settings', 'shelf', 'protocol']).records,
		joined,
	))
		questions.push(forkQuestion(fork, '', placeOf))
	return questions
}
const kindWords: Record<string, string> = {
	clinic: 'The letterhead',
	settings: 'The settings of the records',
	shelf: 'The shelf',
	protocol: 'The protocol',
	season: 'The season',
	visit: 'The amended visit',
}
function forkQuestion(
	fork: Fork,
	name: string,
	placeOf: (origin: string) => string,
	playerId?: string,
): Question {
	const what = `${kindWords[fork.kind] ?? fork.kind}${name ? ` of ${name}` : ''}`
	return {
		what: 'version',
		id: fork.after,
		...(playerId === undefined ? {} : { playerId }),
		name,
		says: `${what} was changed in two places. Both are kept; choose which one counts.`,
		fields: [
			{
				field: fork.kind,
				values: fork.records.map(({ record, at, origin }) => ({
					record,
					at,
					place: placeOf(origin),
					shown: `version of ${at.slice(0, 16).replace('T', ' ')}`,
				})),
			},
		],
	}
}
const shown = (value: unknown): string =>
	value === null || value === undefined
		? 'nothing'
		: typeof value === 'object'
			? Object.values(value)
					.filter((one) => one !== null)
					.join(', ')
			: String(value)
export function joinedOf({ store }: Deps): Set<string> {
	return new Set(
		store.load(['answer']).records.flatMap((record) => (record.value as { joins: string[] }).joins),
	)
}

export function listOutreach(state: State, deps: Deps): OutputOf<'outreach.list'> {
	const values = packValues(deps)
	const merged = values.filter((value) => value.what === 'merged')
	const ids = [...new Set(merged.flatMap((value) => value.players))]
	return {
		...(state.pack
			? {
					carries: {
						packId: state.pack.packId,
						madeAt: state.pack.madeAt,
						by: state.pack.by,
						expires: state.pack.expires,
						ranOut: state.pack.expires < dayHere(deps.now()),
						players: state.pack.players,
						counts: state.pack.counts,
						shelf: state.pack.shelf,
						protocol: state.pack.protocol,
						...(state.pack.removedAt ? { removedAt: state.pack.removedAt } : {}),
						newHere: newHere(state, deps),
					},
				}
			: {}),
		out: values
			.filter((value) => value.what === 'out')
			.map(({ packId, madeAt, by, expires, file, players }) => ({
				packId,
				madeAt,
				by,
				expires,
				file,
				players: players.map((player) => player.name),
				home: merged.some((value) => value.answers === packId),
			}))
			.reverse(),
		merged: merged
			.map(
				({
					packId,
					at,
					by,
					counts,
					receipt,
					duplicates,
					quarantined,
					draftsBoth,
					trailRows = 0,
				}) => ({
					packId,
					at,
					by,
					counts,
					trailRows,
					receipt,
					duplicates: duplicates.map((duplicate) => {
						const joined = [...state.merges.values()].find(
							(two) =>
								(two.from === duplicate.playerId && two.into === duplicate.like) ||
								(two.from === duplicate.like && two.into === duplicate.playerId),
						)
						return { ...duplicate, ...(joined ? { joined: joined.mergeId } : {}) }
					}),
					quarantined,
					draftsBoth: draftsBoth.filter(
						(one) => one.drafts.filter((id) => state.drafts.has(id)).length > 1,
					),
				}),
			)
			.reverse(),
		questions: openQuestions(deps, ids),
	}
}
/** How much was entered on the laptop itself. */
function newHere(state: State, { store }: Deps): { records: number; drafts: number } {
	return {
		records: store
			.carry([...state.players.keys()], () => true)
			.filter((one) => one.origin === store.origin).length,
		drafts: state.drafts.size,
	}
}
/** An answer is a record: it names what it puts to rest, and nothing of that is changed. */
export function answerQuestion(
	state: State,
	deps: Deps,
	{ what, id, playerId, choices }: InputOf<'outreach.answer'>,
): OutputOf<'outreach.answer'> {
	const { store, now } = deps
	const ids = playerId === undefined ? [] : [playerId]
	const question = openQuestions(deps, ids).find((one) => one.what === what && one.id === id)
	if (!question) throw new Refusal('This question is answered already. Look at the list again.')
	const chosen = question.fields.map(({ field, values }) => {
		const pick = values.find((value) => value.record === choices[field])
		if (!pick)
			throw new Refusal('Choose one of the values for each field. Nothing was changed.', [
				{
					path: `choices.${field}`,
					message: `given ${choices[field] ?? 'nothing'}, allowed: one of the values shown`,
				},
			])
		return { field, record: pick.record }
	})
	const at = now().toISOString()
	store.together(() => {
		let joins = question.fields.flatMap((field) => field.values.map((value) => value.record))
		const first = chosen[0] as { record: string }
		if (what === 'details' && playerId !== undefined) {
			const line = versions(deps, 'player', playerId)
			const { value, heads } = joinFields(line, playerOf, joinedOf(deps))
			const whole: Record<string, unknown> = { ...value }
			for (const { field, record } of chosen) {
				const answer = playerOf(line.find((one) => one.id === record)?.value)[field]
				if (answer === undefined) delete whole[field]
				else whole[field] = answer
			}
			joins = heads
			store.append({
				kind: 'player',
				at,
				follows: heads.at(-1) as string,
				value: { playerId, player: playerSchema.parse(whole) },
				about: playerId,
			})
		}
		if (what === 'consent' && playerId !== undefined) {
			const contested = new Set(joins)
			// heads of the same place fall with the one that lost; the chosen one stands
			joins = headsOf(versions(deps, 'consent', playerId) as Version[], joinedOf(deps))
				.filter((version) => contested.has(version.id) && version.id !== first.record)
				.map((version) => version.id)
		}
		if (what === 'version') {
			const stands = store.read(first.record)
			if (['clinic', 'settings', 'shelf', 'protocol', 'season'].includes(stands.kind)) {
				const card =
					playerId === undefined
						? undefined
						: store.cardsAbout(stands.kind, playerId).find((one) => one.record === first.record)
								?.card
				store.append({
					kind: stands.kind,
					at,
					follows: first.record,
					value: stands.value,
					...(playerId === undefined ? {} : { about: playerId, card }),
				})
			}
		}
		store.append({
			kind: 'answer',
			at,
			value: { what, of: id, joins, chosen, by: state.acts().name },
			...(playerId === undefined ? {} : { about: playerId }),
		})
	})
	reload(state, deps)
	return {}
}
/**
 * Of two drafts of one player that came of an outreach day the clinician keeps one; which one was
 * put away is in the trail.
 */
export function putDraftAway(
	state: State,
	deps: Deps,
	{ draftId }: InputOf<'outreach.putDraftAway'>,
): OutputOf<'outreach.putDraftAway'> {
	const draft = state.drafts.get(draftId)
	if (!draft) throw new Refusal('This draft is not open any more.')
	if (state.draftsOf(draft.playerId).length < 2)
		throw new Refusal('This is the only draft of the player. It is kept.')
	deps.store.together(() => {
		deps.store.dropDraft(draftId)
		deps.store.audit({
			function: 'update',
			objectRef: `draft:${draftId}`,
			playerId: draft.playerId,
			purpose: 'put away after an outreach day',
		})
	})
	state.memory.drafts.drop(draftId)
	return {}
}
/** The two drafts side by side, field by field where they differ. */
export function compareDrafts(
	state: State,
	{ store }: Deps,
	{ drafts }: InputOf<'outreach.compareDrafts'>,
): OutputOf<'outreach.compareDrafts'> {
	const flat = drafts.map((id) => {
		const draft = state.drafts.has(id) ? store.draft(id) : undefined
		if (!draft) throw new Refusal('One of the two drafts is not open any more.')
		// what is compared is the whole value; what is shown is its words
		const found = new Map<string, { is: string; says: string }>()
		const walk = (value: unknown, path: string): void => {
			if (typeof value === 'object' && value !== null && !Array.isArray(value))
				for (const [key, one] of Object.entries(value)) walk(one, path ? `${path}.${key}` : key)
			else if (value !== undefined)
				found.set(path, {
					is: JSON.stringify(value),
					says: Array.isArray(value)
						? value
								.map((one) =>
									typeof one === 'object' && one !== null
										? Object.values(one)
												.filter((part) => typeof part !== 'object')
												.join(', ')
										: String(one),
								)
								.join('; ')
						: String(value),
				})
		}
		const { visit, decisions, raw } = (draft.value as DraftValue).content
		walk(visit, '')
		walk(decisions, 'decisions')
		walk(raw, 'raw')
		return { id, savedAt: draft.at, found }
	})
	const [a, b] = flat as [(typeof flat)[number], (typeof flat)[number]]
	const paths = [...new Set([...a.found.keys(), ...b.found.keys()])].filter(
		(path) => a.found.get(path)?.is !== b.found.get(path)?.is,
	)
	return {
		savedAt: [a.savedAt, b.savedAt],
		differences: paths.map((path) => ({
			path,
			first: a.found.get(path)?.says ?? '',
			second: b.found.get(path)?.says ?? '',
		})),
	}
}
/**
 * Two drafts become one: where they differ, `choices` name for each path the draft whose value
 * stands. Without a choice the one that has a value stands.
 */
export function joinByChoice(
	state: State,
	deps: Deps,
	{ drafts, choices }: InputOf<'outreach.joinDrafts'>,
): OutputOf<'outreach.joinDrafts'> {
	const { store } = deps
	const [a, b] = drafts.map((id) => {
		const draft = state.drafts.has(id) ? store.draft(id) : undefined
		if (!draft) throw new Refusal('One of the two drafts is not open any more.')
		return { id, at: draft.at, value: draft.value as DraftValue }
	}) as [
		{ id: string; at: string; value: DraftValue },
		{ id: string; at: string; value: DraftValue },
	]
	if (
		a.id === b.id ||
		a.value.playerId !== b.value.playerId ||
		a.value.content.visit.visitDate !== b.value.content.visit.visitDate
	)
		throw new Refusal('These are not two drafts of one visit. Nothing was changed.')
	const { value, conflicts } = joinDraftContents(
		undefined,
		a.value.content,
		b.value.content,
		(path) => {
			const pick = choices[path.replace(/^visit\./, '')]
			return stepOnly(path) ?? (pick === a.id ? 'first' : pick === b.id ? 'second' : undefined)
		},
	)
	if (conflicts.length > 0)
		throw new Refusal(
			'Choose a value for each field that differs. Nothing was changed.',
			conflicts.map((path) => ({
				path,
				message: path.startsWith('visit.notMeasured.')
					? 'measured in one and marked as not measured in the other: choose the same draft for ' +
						'both'
					: 'not chosen, given nothing, allowed: the first or the second',
			})),
		)
	const read = draftContentSchema.safeParse(value)
	if (!read.success)
		throw new Refusal(
			'The joined draft cannot stand: some values do not go together. Nothing was changed. Go ' +
				'on with one of the two and copy the rest by hand.',
		)
	store.together(() => {
		store.dropDraft(b.id)
		store.saveDraft(a.id, [a.at, b.at].sort().at(-1) ?? a.at, { ...a.value, content: read.data })
		store.audit({
			function: 'update',
			objectRef: `draft:${a.id}`,
			playerId: a.value.playerId,
			purpose: 'joined by choice after an outreach day',
		})
	})
	reload(state, deps)
	return {}
}
