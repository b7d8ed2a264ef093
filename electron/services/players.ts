import { randomUUID } from 'node:crypto'
import type { Card, InputOf, OutputOf } from '../../shared/contract.ts'
import { putPlayer } from './load.ts'
import type { Deps, State } from './state.ts'

const ligatures: Record<string, string> = { ø: 'o', đ: 'd', ł: 'l', æ: 'ae', œ: 'oe', ß: 'ss' }
/** Lower case without accents, so that 'zoe nguyen' finds Zoë Nguyễn. */
export function plain(text: string): string {
	return text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase().replace(/[øđłæœß]/g, (one) => ligatures[one] ?? one)
}
const words = (text: string) => plain(text).split(/[\s,;'’-]+/).filter(Boolean)
const byName = (a: Card, b: Card) => a.familyName.localeCompare(b.familyName) || a.givenName.localeCompare(b.givenName) || (a.birthDate < b.birthDate ? -1 : 1)

export function searchPlayers(state: State, { query, limit }: InputOf<'players.search'>): OutputOf<'players.search'> {
	const wanted = words(query)
	const cards = [...state.players.values()].map((entry) => entry.card).filter((card) => {
		const have = [...words(`${card.givenName} ${card.familyName} ${card.club ?? ''}`), ...plain(`${card.givenName} ${card.familyName}`).split(/\s+/), card.birthDate]
		return wanted.every((word) => have.some((one) => one.startsWith(word)) || card.birthDate.includes(word)) || have.includes(query.trim())
	})
	return { total: cards.length, cards: cards.sort(byName).slice(0, limit) }
}
/** A save is a new record that follows the last one. Likely duplicates are pointed out, never merged. */
export function savePlayer(state: State, { store, now }: Deps, { playerId, player }: InputOf<'players.save'>): OutputOf<'players.save'> {
	const known = playerId === undefined ? undefined : state.entry(playerId)
	const id = playerId ?? randomUUID()
	const family = plain(player.familyName)
	const similar = [...state.players.values()].map((entry) => entry.card).filter((card) => card.playerId !== id && ((card.birthDate === player.birthDate && (plain(card.familyName) === family || plain(card.givenName) === plain(player.givenName))) || (plain(card.familyName) === family && plain(card.givenName) === plain(player.givenName))))
	const recordId = store.append({ kind: 'player', at: now().toISOString(), ...(known ? { follows: known.recordId } : {}), value: { playerId: id, player } })
	putPlayer(state, id, player, recordId)
	return { playerId: id, similar }
}
export function openPlayer(state: State, { playerId }: InputOf<'players.open'>): OutputOf<'players.open'> {
	const { player, visits } = state.entry(playerId)
	return {
		player,
		visits: visits.map(({ visitId, visitDate, signedAt }) => ({ visitId, visitDate, signedAt })).sort((a, b) => (a.visitDate < b.visitDate ? 1 : -1)),
		drafts: [...state.drafts].filter(([, draft]) => draft.playerId === playerId).map(([draftId, { visitDate, savedAt }]) => ({ draftId, visitDate, savedAt })),
	}
}
