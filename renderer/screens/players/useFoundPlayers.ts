/** The players that fit what was typed, the row that is marked, and the keys that move it. */
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import type { Card, InputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { goTo } from '../../parts/goTo.ts'
import { type HostAnswer, useReading } from '../../query.ts'

const limit = 100
export interface Found {
	total: number
	cards: readonly Card[]
}
export const openCard = (card: Card): void => goTo(`/players/${card.playerId}`)

type Search = InputOf<'players.search'>
let before: Promise<unknown> = Promise.resolve()
/**
 * One search after another, in the order of typing: over several connections the last letter could
 * reach the host before the one typed before it, and the audit trail would keep the shorter word.
 */
function searchInTurn(search: Search): Promise<Found> {
	const found = before.then(() => call('players.search', search))
	before = found.catch(() => {})
	return found
}
/** What the host found for the text. */
export function useFoundPlayers(query: string): HostAnswer<Found> {
	const search: Search = { query, limit }
	const options = { keepLast: true }
	return useReading('players.search', search, ['players.search'], searchInTurn, options)
}
export interface Marked {
	/** place of the marked row */
	at: number
	/** it was moved by the keys: then it is read aloud and kept in view */
	moved: boolean
	onKey: (event: KeyboardEvent) => void
}
/**
 * @param cards the rows as they stand
 * @param fresh they answer what stands in the field now
 */
export function useMarkedRow(query: string, { total, cards }: Found, fresh: boolean): Marked {
	const [at, setAt] = useState(0)
	const [moved, setMoved] = useState(false)
	/**
	 * Enter came before the answer: then a single match opens when it arrives, several wait to be
	 * looked at.
	 */
	const entered = useRef(false)
	// biome-ignore lint/correctness/useExhaustiveDependencies: other words bring other rows
	useEffect(() => {
		entered.current = false
	}, [query])
	useEffect(() => {
		if (!fresh) return
		setAt(0)
		setMoved(false)
		const [only] = cards
		if (entered.current && only && total === 1) openCard(only)
	}, [fresh, cards, total])
	const onKey = (event: KeyboardEvent) => {
		if (!(event.target instanceof HTMLInputElement)) return
		const step = { ArrowDown: 1, ArrowUp: -1 }[event.key]
		if (step && fresh) {
			event.preventDefault()
			setMoved(true)
			setAt(Math.max(0, Math.min(cards.length - 1, at + step)))
		}
		if (event.key !== 'Enter') return
		event.preventDefault()
		const chosen = cards[at]
		if (!fresh) entered.current = true
		else if (chosen) openCard(chosen)
	}
	return { at, moved, onKey }
}
