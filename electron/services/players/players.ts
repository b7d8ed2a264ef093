import { randomUUID } from 'node:crypto'
import type { Card, InputOf, OutputOf } from '../../../shared/contract.ts'
import { putMerge, putPlayer } from '../records/load.ts'
import { type Deps, type PlayerEntry, Refusal, type State } from '../records/state.ts'
import { visitsOf } from '../visits/visits.ts'
import { likeness, words } from './names.ts'

export { plain } from './names.ts'

/** Dates of visits are looked up for the players that are shown, and remembered. */
function cardOf(state: State, deps: Deps, entry: PlayerEntry): Card {
	if (!entry.lastVisitKnown) {
		const [last] = visitsOf(state, deps, entry.card.playerId).filter((line) => !line.inError)
		if (last) entry.card.lastVisit = last.card.visitDate
		else delete entry.card.lastVisit
		entry.lastVisitKnown = true
	}
	return { ...entry.card, openDraft: state.hasDraft(entry.card.playerId) }
}
/**
 * The last answer for a list: whatever is typed on is looked for in it alone. A new list has a new
 * array.
 */
const last = new WeakMap<
	readonly PlayerEntry[],
	{ wanted: readonly string[]; found: PlayerEntry[] }
>()
const mark = '\n'
/** Each wanted word begins a word of the player, or is part of the birth date. */
function matching(all: PlayerEntry[], wanted: readonly string[]): PlayerEntry[] {
	if (wanted.length === 0) return all
	const before = last.get(all)
	const narrows =
		before &&
		before.wanted.length <= wanted.length &&
		before.wanted.every((word, at) => wanted[at]?.startsWith(word))
	const begins = wanted.map((word) => mark + word)
	// only digits can be part of a date: letters are spared the second look
	const dated = wanted.map((word) => /^\d+$/.test(word))
	const found = (narrows ? before.found : all).filter(({ card, hay }) =>
		begins.every(
			(begin, at) =>
				hay.includes(begin) ||
				(dated[at] === true && card.birthDate.includes(wanted[at] as string)),
		),
	)
	last.set(all, { wanted, found })
	return found
}
export function searchPlayers(
	state: State,
	deps: Deps,
	{ query, limit }: InputOf<'players.search'>,
): OutputOf<'players.search'> {
	const found = matching(state.ordered(), words(query))
	return {
		total: found.length,
		cards: found.slice(0, limit).map((entry) => cardOf(state, deps, entry)),
	}
}
/**
 * A save is a new record that follows the last one. Likely duplicates and twins are pointed out,
 * never merged.
 */
export function savePlayer(
	state: State,
	deps: Deps,
	{ playerId, player }: InputOf<'players.save'>,
): OutputOf<'players.save'> {
	const known = playerId === undefined ? undefined : state.entry(playerId)
	const id = playerId ?? randomUUID()
	const recordId = deps.store.append({
		kind: 'player',
		at: deps.now().toISOString(),
		...(known ? { follows: known.recordId } : {}),
		value: { playerId: id, player },
		about: id,
	})
	putPlayer(state, id, player, recordId)
	const own = state.entry(id).card
	const similar = state
		.ordered()
		.filter(({ card }) => card.playerId !== id && likeness(card, own) !== undefined)
		.slice(0, 20)
	return { playerId: id, similar: similar.map((entry) => cardOf(state, deps, entry)) }
}
export function openPlayer(
	state: State,
	deps: Deps,
	{ playerId }: InputOf<'players.open'>,
): OutputOf<'players.open'> {
	const { player } = state.entry(playerId)
	const merged = [...state.merges.values()]
		.filter((merge) => merge.into === playerId)
		.map(({ mergeId, from }) => {
			const other = state.players.get(from)?.player
			return {
				mergeId,
				playerId: from,
				name: other ? `${other.givenName} ${other.familyName}` : 'a record that cannot be read',
			}
		})
	const visits = visitsOf(state, deps, playerId)
	// the reason of an amendment may be clinical: it stays with those who treat
	const amended = (visitId: string | undefined) => {
		const card = visits.find((visit) => visit.card.visitId === visitId)?.card
		return (
			card && {
				amends: { visitId: card.visitId, visitDate: card.visitDate, version: card.version },
			}
		)
	}
	return {
		player,
		visits: visits.map(({ card, inError, awaits }) => ({
			visitId: card.visitId,
			visitDate: card.visitDate,
			signedAt: card.signedAt,
			...(card.version > 1 ? { version: card.version } : {}),
			...(inError ? { inError } : {}),
			...(awaits ? { awaitsCountersign: true } : {}),
		})),
		drafts: state.draftsOf(playerId).map(([draftId, { visitDate, savedAt, amends }]) => ({
			draftId,
			visitDate,
			savedAt,
			...amended(amends?.visitId),
		})),
		...(merged.length ? { merged } : {}),
	}
}
/** Shows two records as one player; nothing is moved or lost, so that it can be undone. */
export function mergePlayers(
	state: State,
	{ store, now }: Deps,
	{ from, into, reason }: InputOf<'players.merge'>,
): OutputOf<'players.merge'> {
	state.entry(from)
	state.entry(into)
	if (from === into) throw new Refusal('A player cannot be merged with itself. Choose two records.')
	if (state.mergedAway(from) || state.mergedAway(into))
		throw new Refusal(
			'One of the two was merged before. Undo that merge first, or merge into the player that ' +
				'is shown.',
		)
	if (state.idsOf(from).includes(into))
		throw new Refusal('These two are merged the other way round already. Undo that merge first.')
	if (state.holds.has(from) !== state.holds.has(into))
		throw new Refusal(
			'One of the two records is on hold. Put the hold on both, or release it, before merging.',
		)
	const mergeId = randomUUID()
	const value = { mergeId, from, into, undone: false, reason }
	putMerge(
		state,
		value,
		store.append({ kind: 'merge', at: now().toISOString(), value, about: into, does: 'merge' }),
	)
	state.entry(into).lastVisitKnown = false
	return { mergeId }
}
export function unmergePlayers(
	state: State,
	{ store, now }: Deps,
	{ mergeId, reason }: InputOf<'players.unmerge'>,
): OutputOf<'players.unmerge'> {
	const merge = state.merges.get(mergeId)
	if (!merge) throw new Refusal('This merge is not in force any more. Open the player again.')
	const value = { mergeId, from: merge.from, into: merge.into, undone: true, reason }
	putMerge(
		state,
		value,
		store.append({
			kind: 'merge',
			at: now().toISOString(),
			follows: merge.recordId,
			value,
			about: merge.into,
			does: 'merge',
		}),
	)
	for (const id of [merge.from, merge.into]) {
		const entry = state.players.get(id)
		if (entry) entry.lastVisitKnown = false
	}
	return {}
}
