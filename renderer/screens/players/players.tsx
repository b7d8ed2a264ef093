/** Finding a player: type, arrow, Enter. */
import { Button, List, ListItemButton, ListItemText, Stack, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'
import { Field, Trouble } from '../../parts/form.tsx'

export function Players() {
	const [query, setQuery] = useState('')
	const [cards, setCards] = useState<Card[]>([])
	const [at, setAt] = useState(0)
	const [says, setSays] = useState('')
	useEffect(() => {
		let current = true
		call('players.search', { query, limit: 100 }).then((found) => { if (current) { setCards(found.cards); setAt(0); setSays('') } }, (error) => { if (current) setSays(wordsOf(error)) })
		return () => { current = false }
	}, [query])
	const open = (card?: Card) => { if (card) location.hash = `#/player/${card.playerId}` }
	return <Stack spacing={2} onKeyDown={(event) => {
		if (!(event.target instanceof HTMLInputElement)) return
		const step = { ArrowDown: 1, ArrowUp: -1 }[event.key]
		if (step) { event.preventDefault(); setAt(Math.max(0, Math.min(cards.length - 1, at + step))) }
		if (event.key === 'Enter') open(cards[at])
	}}>
		<Typography variant="h1">Players</Typography>
		<Field label="Search players" value={query} set={setQuery} focus />
		<Button variant="contained" onClick={() => { location.hash = '#/player' }}>New player</Button><Trouble says={says} />
		<List aria-label="Players">{cards.map((card, index) => <ListItemButton key={card.playerId} selected={index === at} onClick={() => open(card)}><ListItemText primary={`${card.givenName} ${card.familyName}`} secondary={[`born ${card.birthDate}`, card.club, card.openDraft ? 'assessment open' : undefined].filter(Boolean).join(', ')} /></ListItemButton>)}</List>
	</Stack>
}
