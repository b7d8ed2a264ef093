/** The player at a glance while the step is typed: the week, what hurts, and what is worn. */
import { Box, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import { capital } from '../../../../shared/engine/words/words.ts'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { FactTable } from './parts/FactTable.tsx'
import { Figure, ResultSheet, Waiting } from './parts/ResultSheet.tsx'
import {
	conditionLines,
	hoursWords,
	type LoadRow,
	loadRows,
	pairLines,
	playedWords,
	sessionWords,
	surfaceWords,
} from './playFacts.ts'
import type { ResultProps } from './resultProps.ts'

export function PlayResult({ assessment, visit }: ResultProps) {
	const rows = loadRows(assessment, visit, clinicProtocol)
	const sessions = sessionWords(visit)
	const hours = hoursWords(visit, clinicProtocol)
	const played = [hours, playedWords(visit), surfaceWords(visit)].map(capital).filter(Boolean)
	return (
		<ResultSheet label="The player at a glance">
			{sessions || played.length > 0 ? (
				<Figure name="Play" says={sessions || 'Sessions not recorded'} lines={played} />
			) : (
				<Waiting>The week stands here: sessions, hours and surfaces as they are recorded.</Waiting>
			)}
			{rows.length > 0 && <Week rows={rows} />}
			<Box
				sx={{
					display: 'grid',
					gridTemplateColumns: 'repeat(auto-fit, minmax(min(18rem, 100%), 1fr))',
					gap: 2,
				}}
			>
				<Lines name="Conditions" lines={conditionLines(visit)} none="None recorded." />
				<Lines
					name="Pairs owned"
					lines={pairLines(assessment, visit)}
					none="None recorded: the room in each and what becomes of it will stand here."
				/>
			</Box>
		</ResultSheet>
	)
}
const Week = ({ rows }: { rows: readonly LoadRow[] }) => (
	<FactTable
		label="The week against its limits"
		head={['Load', 'Now', 'Limit']}
		rows={rows.map(({ key, name, says, limit, beyond }) => ({
			key,
			name,
			limit,
			cells: [{ key: 'now', says: beyond ? <strong>{says}, beyond</strong> : says }],
		}))}
	/>
)
interface LinesProps {
	name: string
	lines: readonly string[]
	/** Where there is none. */
	none: ReactNode
}
const Lines = ({ name, lines, none }: LinesProps) => (
	<Box>
		<Typography variant="body2" color="text.secondary" component="h2">
			{name}
		</Typography>
		{lines.length === 0 && <Waiting>{none}</Waiting>}
		<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none', fontVariantNumeric: 'tabular-nums' }}>
			{lines.map((line) => (
				<li key={line}>{line}</li>
			))}
		</Box>
	</Box>
)
