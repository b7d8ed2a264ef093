/** The players found, one row each; the marked one opens by Enter. */

import {
	Box,
	Chip,
	Link,
	Table,
	TableBody,
	TableCell,
	TableContainer,
	TableHead,
	TableRow,
} from '@mui/material'
import { useEffect, useRef } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { dayInWords } from '../../parts/dates.ts'
import { scrollsX } from '../../parts/scrollsX.ts'
import { type Marked, openCard } from './useFoundPlayers.ts'

const heads = ['Name', 'Birth date', 'Club', 'Last visit', 'Assessment']

function Quiet({ children }: { children: string }) {
	return (
		<Box component="span" sx={{ color: 'text.secondary' }}>
			{children}
		</Box>
	)
}
function PlayerRow({ card, marked }: { card: Card; marked: boolean }) {
	return (
		<TableRow
			hover
			selected={marked}
			onClick={() => openCard(card)}
			sx={{
				cursor: 'pointer',
				height: 44,
				'&.Mui-selected': {
					boxShadow: (theme) => `inset 4px 0 0 ${theme.vars?.palette.primary.main}`,
				},
				'&:last-child td, &:last-child th': { border: 0 },
			}}
		>
			<TableCell component="th" scope="row">
				<Link
					href={`#/players/${card.playerId}`}
					underline="hover"
					sx={{ fontWeight: 600, color: 'text.primary', fontSize: '1rem' }}
				>
					{fullName(card)}
				</Link>
			</TableCell>
			<TableCell>{dayInWords(card.birthDate)}</TableCell>
			<TableCell>{card.club ?? <Quiet>No club</Quiet>}</TableCell>
			<TableCell>
				{card.lastVisit ? dayInWords(card.lastVisit) : <Quiet>No visit yet</Quiet>}
			</TableCell>
			<TableCell>
				{card.openDraft && (
					<Chip size="small" color="primary" variant="outlined" label="draft open" />
				)}
			</TableCell>
		</TableRow>
	)
}
export function PlayerTable({
	cards,
	marked: { at, moved },
}: {
	cards: readonly Card[]
	marked: Marked
}) {
	const rows = useRef<HTMLTableSectionElement>(null)
	useEffect(() => {
		if (moved) rows.current?.children[at]?.scrollIntoView({ block: 'nearest' })
	}, [at, moved])
	return (
		<TableContainer sx={scrollsX}>
			<Table size="small" aria-label="Players">
				<TableHead>
					<TableRow>
						{heads.map((head) => (
							<TableCell key={head}>{head}</TableCell>
						))}
					</TableRow>
				</TableHead>
				<TableBody ref={rows}>
					{cards.map((card, index) => (
						<PlayerRow key={card.playerId} card={card} marked={index === at} />
					))}
				</TableBody>
			</Table>
		</TableContainer>
	)
}
