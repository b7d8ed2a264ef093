/** The list of players: what is typed, and which players it fits. */
import type { Card, InputOf, OutputOf } from '../../../shared/contract.ts'
import { dayHere } from '../../../shared/desk/workplace/local-day.ts'
import { daysMeant } from '../../../shared/desk/workplace/written-day.ts'
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
/** What is looked for: words that begin a player's, and a birth date by all its readings. */
interface Wanted {
	words: readonly string[]
	/** ISO dates of which one must be the birth date; none where no date was typed */
	days: readonly string[]
}
/** Words of a date: '17 April 2010'. */
const mostDateWords = 3
/** Figures alone, of as many as a telephone number has: looked for without what stands between. */
const telephone = /^[+(]?\d[\d\s()/.-]{5,}$/
/** The longest run of words that is a date is taken for one; what is left are words. */
function wantedBy(query: string, on: string): Wanted {
	const typed = query.trim().split(/\s+/).filter(Boolean)
	for (let long = mostDateWords; long > 0; long--)
		for (let from = 0; from + long <= typed.length; from++) {
			const days = daysMeant(typed.slice(from, from + long).join(' '), on)
			if (days.length > 0) {
				const rest = [...typed.slice(0, from), ...typed.slice(from + long)]
				return { words: words(rest.join(' ')), days }
			}
		}
	const figures = telephone.test(query.trim()) ? [query.replace(/\D/g, '')] : undefined
	return { words: figures ?? words(query), days: [] }
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
function matching(all: PlayerEntry[], { words: wanted, days }: Wanted): PlayerEntry[] {
	const born = ({ card }: PlayerEntry) => days.length === 0 || days.includes(card.birthDate)
	if (wanted.length === 0) return days.length === 0 ? all : all.filter(born)
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
	return found.filter(born)
}
export function searchPlayers(
	memory: Pick<Memory, 'players' | 'drafts'>,
	deps: Deps,
	{ query, limit }: InputOf<'players.search'>,
): OutputOf<'players.search'> {
	const found = matching(memory.players.ordered(), wantedBy(query, dayHere(deps.now())))
	return {
		total: found.length,
		cards: found.slice(0, limit).map((entry) => cardOf(memory, deps, entry)),
	}
}
