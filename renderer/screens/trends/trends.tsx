/**
 * A player's visits side by side: what really changed beyond error first, then charts, then every
 * measure.
 */
import { Alert, Box, Link, Paper, Stack, Typography } from '@mui/material'
import { useMemo } from 'react'
import type { Chart } from '../../../shared/engine/charts/chart.ts'
import { Answered } from '../../parts/Answered.tsx'
import { ChartView } from '../../parts/ChartView.tsx'
import { Lacking } from '../../parts/Lacking.tsx'
import { useReading } from '../../query.ts'
import { courseOf, type Opened, openVisits } from './openVisits.ts'
import { SideBySide } from './SideBySide.tsx'
import { WhatChanged } from './WhatChanged.tsx'

function Head({ playerId, opened }: { playerId: string; opened: Opened }) {
	const count = opened.visits.length
	return (
		<Box
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				justifyContent: 'space-between',
				alignItems: 'center',
				gap: 2,
			}}
		>
			<Box>
				<Typography variant="h1">Trends</Typography>
				<Typography color="text.secondary">
					{opened.name}, {count} {count === 1 ? 'visit' : 'visits'}
					{opened.draftDate ? '; the last one is a draft, not signed' : ''}
				</Typography>
			</Box>
			<Link
				href={`#/players/${playerId}`}
				underline="hover"
				sx={{
					display: 'inline-flex',
					alignItems: 'center',
					minHeight: 44,
					px: 1.5,
					fontWeight: 600,
				}}
			>
				Back to the player
			</Link>
		</Box>
	)
}
function Charts({ charts }: { charts: readonly Chart[] }) {
	if (charts.length === 0) return null
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(30rem, 100%), 1fr))',
				gap: 2,
				alignItems: 'start',
			}}
		>
			{charts.map((chart) => (
				<Paper key={chart.id} variant="outlined" sx={{ p: 2, minWidth: 0, '& figure': { mt: 0 } }}>
					<ChartView chart={chart} />
				</Paper>
			))}
		</Box>
	)
}
function TrendsPage({ playerId, opened }: { playerId: string; opened: Opened }) {
	const { visits, draftDate, lacking } = opened
	const { charts, trouble } = useMemo(() => courseOf(visits), [visits])
	return (
		<Stack spacing={3}>
			<Head playerId={playerId} opened={opened} />
			{trouble ? <Alert severity="warning">{trouble}</Alert> : null}
			<Lacking says={lacking} />
			{visits.length === 0 ? (
				<Alert severity="info">
					No visits yet. <Link href={`#/assessment/${playerId}`}>Start an assessment</Link>; its
					measures then stand here.
				</Alert>
			) : (
				<WhatChanged visits={visits} />
			)}
			<Charts charts={charts} />
			{visits.length > 0 ? <SideBySide visits={visits} draftDate={draftDate} /> : null}
		</Stack>
	)
}
export function Trends({ playerId }: { playerId: string }) {
	const answer = useReading(
		'trends',
		{ playerId },
		['players.open', 'visits.open', 'protocol.get'],
		openVisits,
	)
	return (
		<Answered of={answer} what="the visits">
			{(opened) => <TrendsPage playerId={playerId} opened={opened} />}
		</Answered>
	)
}
