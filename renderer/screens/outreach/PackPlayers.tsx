/** The players that go into a pack, found by any part of the name or club. */

import { Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useState } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { useHost } from '../../query.ts'

const mostShown = 200
const cardWords = (card: Card): string =>
	`${fullName(card)}, born ${dayInWords(card.birthDate)}${card.club ? `, ${card.club}` : ''}`
const fits = (card: Card, query: string): boolean =>
	`${fullName(card)} ${card.club ?? ''}`.toLowerCase().includes(query.toLowerCase())

function CardTick({
	card,
	chosen,
	choose,
}: {
	card: Card
	chosen: boolean
	choose: (on: boolean) => void
}) {
	return (
		<Box>
			<FormControlLabel
				control={<Checkbox checked={chosen} onChange={(event) => choose(event.target.checked)} />}
				label={cardWords(card)}
			/>
		</Box>
	)
}
/** @param total how many players are on record; undefined until that is known */
function hintWords(chosen: number, total = 0): string {
	const cut = total > mostShown ? `; the first ${mostShown} of ${total} are listed` : ''
	return `${chosen} chosen${cut}. With nobody chosen the pack is empty but for clinic and shelf.`
}
export function PackPlayers({
	chosen,
	setChosen,
}: {
	/** ids of players */
	chosen: readonly string[]
	setChosen: (chosen: readonly string[]) => void
}) {
	const answer = useHost('players.search', { query: '', limit: mostShown })
	const [query, setQuery] = useState('')
	const total = answer.value?.total
	const cards = (answer.value?.cards ?? []).filter(
		(card) => chosen.includes(card.playerId) || fits(card, query),
	)
	return (
		<>
			<Field
				label="Find players"
				value={query}
				set={setQuery}
				optional
				hint={hintWords(chosen.length, total)}
			/>
			<Refused of={answer} />
			<Box
				role="group"
				aria-label="Players for the pack"
				sx={{
					maxHeight: 260,
					overflowY: 'auto',
					border: 1,
					borderColor: 'divider',
					borderRadius: 1,
					px: 2,
					py: 0.75,
					maxWidth: '52rem',
				}}
			>
				{total !== undefined && cards.length === 0 && (
					<Typography color="textSecondary" sx={{ py: 1.5 }}>
						{total === 0 ? 'No player on record yet.' : 'Nobody fits. Type less of the name.'}
					</Typography>
				)}
				{cards.map((card) => (
					<CardTick
						key={card.playerId}
						card={card}
						chosen={chosen.includes(card.playerId)}
						choose={(on) =>
							setChosen(
								on
									? [...chosen, card.playerId]
									: chosen.filter((playerId) => playerId !== card.playerId),
							)
						}
					/>
				))}
			</Box>
			<Box>
				<Button
					variant="outlined"
					disabled={cards.length === 0}
					onClick={() =>
						setChosen([...new Set([...chosen, ...cards.map((card) => card.playerId)])])
					}
				>
					Choose all that are shown
				</Button>
			</Box>
		</>
	)
}
