/** The list of players: what is typed, and which players it fits. */
import type { Card, InputOf, OutputOf } from '../../../shared/contract.ts'
import type { Deps } from '../records/deps.ts'
import type { Memory } from '../records/memory.ts'
import { visitsOf } from '../visits/visits.ts'
import type { PlayerEntry } from './memory.ts'
import { words } from './names.ts'

/** Dates of visits are looked up for the players that are shown, and remembered. */
export function cardOf(
	{ players, drafts }: Pick<Memory, 'players' | 'drafts'>,
	deps: Deps,
	{ card, ...entry }: PlayerEntry,
): Card {
	const { playerId } = card
	if (!entry.lastVisitKnown) {
		const last = visitsOf(players, deps, playerId).find((line) => !line.inError)
		players.knowLastVisit(playerId, last?.card.visitDate)
	}
	return { ...card, openDraft: drafts.of(players.idsOf(playerId)).length > 0 }
}
/**
 * The last answer for a list: whatever is typed on is looked for in it alone. A new list has a new
 * array.
 */
const lastAnswer = new WeakMap<
	readonly PlayerEntry[],
	{ wanted: readonly string[]; found: PlayerEntry[] }
>()
const wordMark = '\n'
/** Each wanted word begins a word of the player, or is part of the birth date. */
function matching(all: PlayerEntry[], wanted: readonly string[]): PlayerEntry[] {
	if (wanted.length === 0) return all
	const before = lastAnswer.get(all)
	const narrows =
		before &&
		before.wanted.length <= wanted.length &&
		before.wanted.every((word, index) => wanted[index]?.startsWith(word))
	const tests = wanted.map((word) => ({
		begin: wordMark + word,
		// only digits can be part of a date: letters are spared the second look
		partOfDate: /^\d+$/.test(word) ? word : undefined,
	}))
	const found = (narrows ? before.found : all).filter(({ card, hay }) =>
		tests.every(
			({ begin, partOfDate }) =>
				hay.includes(begin) || (partOfDate !== undefined && card.birthDate.includes(partOfDate)),
		),
	)
	lastAnswer.set(all, { wanted, found })
	return found
}
export function searchPlayers(
	memory: Pick<Memory, 'players' | 'drafts'>,
	deps: Deps,
	{ query, limit }: InputOf<'players.search'>,
): OutputOf<'players.search'> {
	const found = matching(memory.players.ordered(), words(query))
	return {
		total: found.length,
		cards: found.slice(0, limit).map((entry) => cardOf(memory, deps, entry)),
	}
}
