/** Finding a player: type, arrow, Enter. */

import { Box, Button, Paper, Stack, Typography } from '@mui/material'
import { useState } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { goTo } from '../../parts/goTo.ts'
import { PrintButton } from '../../parts/Print.tsx'
import { PlayerTable } from './PlayerTable.tsx'
import { type Found, useFoundPlayers, useMarkedRow } from './useFoundPlayers.ts'

/** Read aloud, not shown. */
const spokenOnly = {
	position: 'absolute',
	width: '1px',
	height: '1px',
	overflow: 'hidden',
	clipPath: 'inset(50%)',
	whiteSpace: 'nowrap',
}
const nobody: Found = { total: 0, cards: [] }
const spoken = (card: Card): string => `${fullName(card)}, born ${dayInWords(card.birthDate)}`

function countWords(query: string, { total, cards }: Found): string {
	const of = query.trim() ? 'found' : 'on record'
	if (total === 0) return query.trim() ? 'No player found.' : 'No players on record yet.'
	if (total > cards.length)
		return (
			`The first ${cards.length} of ${total} players ${of}. Type more of the name to ` +
			'narrow them down.'
		)
	return total === 1 ? `One player ${of}.` : `${total} players ${of}.`
}
function Title({ empty }: { empty: boolean }) {
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				justifyContent: 'space-between',
				gap: 2,
			}}
		>
			<Typography variant="h1">Players</Typography>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
				<PrintButton what="this list" disabled={empty} />
				<Button variant="contained" onClick={() => goTo('/players/new')}>
					New player
				</Button>
			</Box>
		</Box>
	)
}
function Nobody({ query }: { query: string }) {
	const typed = query.trim()
	return (
		<Paper variant="outlined" sx={{ p: 5, textAlign: 'center' }}>
			<Typography variant="h2" component="p">
				{typed ? `Nobody matches “${typed}”` : 'The first player goes here'}
			</Typography>
			<Typography color="textSecondary" sx={{ mt: 1 }}>
				{typed
					? 'Check the spelling, try the birth date such as 30 June 2011, or add a new player.'
					: 'Add a player with the button above to begin an assessment.'}
			</Typography>
		</Paper>
	)
}
export function Players() {
	const [query, setQuery] = useState('')
	const answer = useFoundPlayers(query)
	const found = answer.value ?? nobody
	const fresh = answer.value !== undefined && !answer.ofLastInput
	const marked = useMarkedRow(query, found, fresh)
	const chosen = found.cards[marked.at]
	return (
		<Stack spacing={2.5} onKeyDown={marked.onKey} sx={answer.value ? {} : { minHeight: '100vh' }}>
			<Title empty={found.cards.length === 0} />
			<Box className="lw-screen-only" sx={{ maxWidth: 640 }}>
				<Field
					label="Search players"
					value={query}
					set={setQuery}
					focus
					optional
					hint="Name, club or birth date. Arrow keys move, Enter opens."
				/>
			</Box>
			<Refused of={answer} />
			<Typography role="status" color="textSecondary">
				{fresh ? countWords(query, found) : answer.says ? '' : 'Searching.'}
			</Typography>
			<Box component="span" aria-live="polite" sx={spokenOnly}>
				{marked.moved && chosen ? spoken(chosen) : ''}
			</Box>
			{found.cards.length > 0 && <PlayerTable cards={found.cards} marked={marked} />}
			{fresh && found.cards.length === 0 && <Nobody query={query} />}
		</Stack>
	)
}
