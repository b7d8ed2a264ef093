/**
 * A player's visits side by side: what really changed beyond error first, then charts, then every
 * measure.
 */
import { Alert, Box, Button } from '@mui/material'
import { useMemo } from 'react'
import type { Chart } from '../../../shared/engine/charts/chart.ts'
import { Answered } from '../../parts/Answered.tsx'
import { ChartView } from '../../parts/ChartView.tsx'
import { goTo } from '../../parts/goTo.ts'
import { Lacking } from '../../parts/Lacking.tsx'
import { Empty, Page } from '../../parts/Page.tsx'
import { useReading } from '../../query.ts'
import { courseOf, type Opened, openVisits } from './openVisits.ts'
import { SideBySide } from './SideBySide.tsx'
import { WhatChanged } from './WhatChanged.tsx'

function lineOf({ visits, draftDate }: Opened): string {
	const { length: count } = visits
	return (
		`${count} ${count === 1 ? 'visit' : 'visits'}` +
		(draftDate ? '; the last one is a draft, not signed' : '')
	)
}
function Charts({ charts }: { charts: readonly Chart[] }) {
	if (charts.length === 0) return null
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(30rem, 100%), 1fr))',
				gap: 3,
				alignItems: 'start',
			}}
		>
			{charts.map((chart) => (
				<Box key={chart.id} sx={{ minWidth: 0, '& figure': { mt: 0 } }}>
					<ChartView chart={chart} />
				</Box>
			))}
		</Box>
	)
}
function TrendsPage({ playerId, opened }: { playerId: string; opened: Opened }) {
	const { visits, draftDate, lacking } = opened
	const { charts, trouble } = useMemo(() => courseOf(visits), [visits])
	return (
		<Page
			title={`Trends of ${opened.name}`}
			line={lineOf(opened)}
			back={{ to: `#/players/${playerId}`, words: 'Back to the player' }}
		>
			{trouble ? <Alert severity="warning">{trouble}</Alert> : null}
			<Lacking says={lacking} />
			{visits.length === 0 ? (
				<Empty
					says="No visit yet: what is measured at a visit stands here, each measure over time."
					act={
						<Button variant="contained" onClick={() => goTo(`/assessment/${playerId}`)}>
							Start assessment
						</Button>
					}
				/>
			) : (
				<WhatChanged visits={visits} />
			)}
			<Charts charts={charts} />
			{visits.length > 0 ? <SideBySide visits={visits} draftDate={draftDate} /> : null}
		</Page>
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
