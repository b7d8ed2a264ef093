/** Finding a player: type, arrow, Enter. */

import { Box, Button, Typography } from '@mui/material'
import { type ReactNode, useState } from 'react'
import type { Card } from '../../../shared/contract.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { Refused } from '../../parts/Answered.tsx'
import { dayInWords } from '../../parts/dates.ts'
import { Field } from '../../parts/form.tsx'
import { goTo } from '../../parts/goTo.ts'
import { Empty, Page } from '../../parts/Page.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { Way } from '../../parts/panels.tsx'
import { spokenOnly } from '../../parts/spokenOnly.ts'
import { PlayerTable } from './PlayerTable.tsx'
import { type Found, useFoundPlayers, useMarkedRow } from './useFoundPlayers.ts'

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
/** The list keeps its place; what stands beside it comes before it where there is one column. */
const wide = '@container (min-width: 66rem)'
const twoColumns = {
	display: 'grid',
	gap: 2.5,
	gridTemplateColumns: 'minmax(0, 1fr)',
	[wide]: {
		gridTemplateColumns: 'minmax(0, 1fr) 21rem',
		gridTemplateRows: 'auto 1fr',
		columnGap: 4,
	},
}
const besideList = { [wide]: { gridColumn: 2, gridRow: '1 / span 2' } }
const NewPlayer = () => (
	<Button variant="contained" onClick={() => goTo('/players/new')}>
		New player
	</Button>
)
function Nobody({ query }: { query: string }) {
	const typed = query.trim()
	if (!typed)
		return <Empty says="Add the first player to begin an assessment." act={<NewPlayer />} />
	return (
		<Empty
			says={
				`Nobody matches “${typed}”. Check the spelling, try the birth date such as 30 June 2011, ` +
				'or add a new player.'
			}
		/>
	)
}
interface PlayersProps {
	/** what stands beside the list, where the window is wide enough */
	beside?: ReactNode
	/** Who works here runs the desk: whole lists are theirs to bring in. */
	desk?: boolean
}
export function Players({ beside, desk = false }: PlayersProps) {
	const [query, setQuery] = useState('')
	const answer = useFoundPlayers(query)
	const found = answer.value ?? nobody
	const fresh = answer.value !== undefined && !answer.ofLastInput
	const marked = useMarkedRow(query, found, fresh)
	const chosen = found.cards[marked.at]
	/** nobody is on record yet: the way to the first player stands in the empty place */
	const isFirst = fresh && found.total === 0 && query.trim() === ''
	return (
		<Box onKeyDown={marked.onKey} sx={answer.value ? {} : { minHeight: '100vh' }}>
			<Page
				title="Players"
				acts={
					<>
						{desk && <Way to="#/players/import">Import a list</Way>}
						<PrintButton what="this list" disabled={found.cards.length === 0} />
						{!isFirst && <NewPlayer />}
					</>
				}
			>
				<Box sx={beside ? twoColumns : { display: 'grid', gap: 2.5 }}>
					<Box sx={{ display: 'grid', gap: 2.5, alignContent: 'start' }}>
						<Box className="lw-screen-only" sx={{ maxWidth: 640 }}>
							<Field
								label="Search players"
								value={query}
								set={setQuery}
								focus
								optional
								hint="Name, club, birth date, guardian, address or telephone. Arrow keys move, Enter opens."
							/>
						</Box>
						<Refused of={answer} />
						<Typography role="status" color="textSecondary">
							{fresh ? countWords(query, found) : answer.says ? '' : 'Searching.'}
						</Typography>
					</Box>
					{beside && <Box sx={besideList}>{beside}</Box>}
					<Box sx={{ minWidth: 0 }}>
						<Box component="span" aria-live="polite" sx={spokenOnly}>
							{marked.moved && chosen ? spoken(chosen) : ''}
						</Box>
						{found.cards.length > 0 && <PlayerTable cards={found.cards} marked={marked} />}
						{fresh && found.cards.length === 0 && <Nobody query={query} />}
					</Box>
				</Box>
			</Page>
		</Box>
	)
}
