/** Finding a player: type, arrow, Enter. */
import {
	Box,
	Button,
	Chip,
	Link,
	Paper,
	Stack,
	Table,
	TableBody,
	TableCell,
	TableContainer,
	TableHead,
	TableRow,
	Typography,
} from '@mui/material'
import { type KeyboardEvent, useEffect, useRef, useState } from 'react'
import type { Card, OutputOf } from '../../../shared/contract.ts'
import { call, wordsOf } from '../../host.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { parseDate } from '../../parts/parseDate.ts'

const limit = 100
/** Read aloud, not shown. */
const spokenOnly = {
	position: 'absolute',
	width: '1px',
	height: '1px',
	overflow: 'hidden',
	clipPath: 'inset(50%)',
	whiteSpace: 'nowrap',
}
type Found = OutputOf<'players.search'> & { query: string }
const address = (card: Card) => `#/players/${card.playerId}`
const open = (card: Card) => {
	location.hash = address(card)
}

function countWords({ total, cards, query }: Found): string {
	const of = query.trim() ? 'found' : 'on record'
	if (total === 0) return query.trim() ? 'No player found.' : 'No players on record yet.'
	if (total > cards.length)
		return (
			`The first ${cards.length} of ${total} players ${of}. Type more of the name to ` +
			'narrow them down.'
		)
	return total === 1 ? `One player ${of}.` : `${total} players ${of}.`
}

export function Players() {
	const [query, setQuery] = useState('')
	const [found, setFound] = useState<Found>()
	const [at, setAt] = useState(0)
	const [moved, setMoved] = useState(false)
	const [says, setSays] = useState('')
	/**
	 * Enter came before the answer: then a single match opens when it arrives, several wait to be
	 * looked at.
	 */
	const entered = useRef(false)
	const rows = useRef<HTMLTableSectionElement>(null)
	useEffect(() => {
		let current = true
		entered.current = false
		// a birth date in any clear form is looked for as the records write it
		const day = parseDate(query)
		call('players.search', { query: day.ok ? day.iso : query, limit }).then(
			(answer) => {
				if (!current) return
				setFound({ ...answer, query })
				setAt(0)
				setMoved(false)
				setSays('')
				const [only] = answer.cards
				if (entered.current && only && answer.total === 1) open(only)
			},
			(error) => {
				if (current) setSays(wordsOf(error))
			},
		)
		return () => {
			current = false
		}
	}, [query])
	useEffect(() => {
		if (moved) rows.current?.children[at]?.scrollIntoView({ block: 'nearest' })
	}, [at, moved])

	const cards = found?.cards ?? []
	const fresh = found?.query === query
	const chosen = cards[at]
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
		if (!fresh) entered.current = true
		else if (chosen) open(chosen)
	}
	return (
		<Stack spacing={2.5} onKeyDown={onKey} sx={found ? {} : { minHeight: '100vh' }}>
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
					<PrintButton what="this list" disabled={cards.length === 0} />
					<Button
						variant="contained"
						onClick={() => {
							location.hash = '#/players/new'
						}}
					>
						New player
					</Button>
				</Box>
			</Box>
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
			<Trouble says={says} />
			<Typography role="status" color="textSecondary">
				{found && fresh ? countWords(found) : 'Searching.'}
			</Typography>
			<Box component="span" aria-live="polite" sx={spokenOnly}>
				{moved && chosen
					? `${chosen.givenName} ${chosen.familyName}, born ${dayInWords(chosen.birthDate)}`
					: ''}
			</Box>
			{cards.length > 0 && (
				<TableContainer component={Paper} variant="outlined">
					<Table aria-label="Players">
						<TableHead>
							<TableRow>
								{['Name', 'Birth date', 'Club', 'Last visit', 'Assessment'].map((one) => (
									<TableCell key={one}>{one}</TableCell>
								))}
							</TableRow>
						</TableHead>
						<TableBody ref={rows}>
							{cards.map((card, index) => (
								<TableRow
									key={card.playerId}
									hover
									selected={index === at}
									onClick={() => open(card)}
									sx={{
										cursor: 'pointer',
										height: 52,
										'&.Mui-selected': {
											boxShadow: (theme) => `inset 4px 0 0 ${theme.vars?.palette.primary.main}`,
										},
										'&:last-child td, &:last-child th': { border: 0 },
									}}
								>
									<TableCell component="th" scope="row">
										<Link
											href={address(card)}
											underline="hover"
											sx={{ fontWeight: 600, color: 'text.primary', fontSize: '1rem' }}
										>
											{card.givenName} {card.familyName}
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
							))}
						</TableBody>
					</Table>
				</TableContainer>
			)}
			{found && fresh && cards.length === 0 && (
				<Paper variant="outlined" sx={{ p: 5, textAlign: 'center' }}>
					<Typography variant="h2" component="p">
						{query.trim() ? `Nobody matches “${query.trim()}”` : 'The first player goes here'}
					</Typography>
					<Typography color="textSecondary" sx={{ mt: 1 }}>
						{query.trim()
							? 'Check the spelling, try the birth date such as 30 June 2011, or add a new player.'
							: 'Add a player with the button above to begin an assessment.'}
					</Typography>
				</Paper>
			)}
		</Stack>
	)
}
function Quiet({ children }: { children: string }) {
	return (
		<Box component="span" sx={{ color: 'text.secondary' }}>
			{children}
		</Box>
	)
}
