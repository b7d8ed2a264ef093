/** The players that go into a pack, found as everywhere: by name, club, birth date, guardian. */

import { Box, Button, Checkbox, FormControlLabel, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { useHost } from '../../query.ts'

const mostShown = 200
const cardWords = (card: Card): string =>
	`${fullName(card)}, born ${dayInWords(card.birthDate)}${card.club ? `, ${card.club}` : ''}`

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
interface Shown {
	chosen: number
	total: number
	listed: number
}
function hintWords({ chosen, total, listed }: Shown): string {
	const cut =
		total > listed ? `; the first ${listed} of ${total} that fit are listed: type more` : ''
	return `${chosen} chosen${cut}. With nobody chosen the pack is empty but for clinic and shelf.`
}
/** Who fits what is typed, by the host's own search, and before them whoever is chosen already. */
function useCards(query: string, chosen: readonly string[]) {
	const found = useHost('players.search', { query, limit: mostShown }, { keepLast: true })
	/** players that were shown once: a chosen one stays in the list whatever is typed */
	const [seen, setSeen] = useState<ReadonlyMap<string, Card>>(new Map())
	const cards = found.value?.cards ?? []
	useEffect(() => {
		setSeen(
			(before) =>
				new Map([...before, ...cards.map((card): [string, Card] => [card.playerId, card])]),
		)
	}, [cards])
	const fit = new Set(cards.map(({ playerId }) => playerId))
	const kept = chosen.flatMap((id) => (fit.has(id) ? [] : (seen.get(id) ?? [])))
	return { found, cards, kept }
}
export function PackPlayers({
	chosen,
	setChosen,
}: {
	/** ids of players */
	chosen: readonly string[]
	setChosen: (chosen: readonly string[]) => void
}) {
	const [query, setQuery] = useState('')
	const { found: answer, cards: fit, kept } = useCards(query, chosen)
	const total = answer.value?.total
	const cards = [...kept, ...fit]
	return (
		<>
			<Field
				label="Find players"
				value={query}
				set={setQuery}
				optional
				hint={hintWords({ chosen: chosen.length, total: total ?? 0, listed: fit.length })}
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
						{query.trim() === ''
							? 'No player on record yet.'
							: 'Nobody fits. Type less of the name.'}
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
