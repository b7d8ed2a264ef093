/**
 * Beside the measures: the findings by consequence, those of this step first, each with its basis
 * one key away; then the charts of the step and how its numbers were worked out.
 */
import { Box, Chip, Paper, Typography } from '@mui/material'
import { useMemo } from 'react'
import { chartsOf } from '../../../shared/engine/charts/charts.ts'
import type { Assessment } from '../../../shared/engine/findings/assessment.ts'
import type { Finding, Level, Topic } from '../../../shared/engine/findings/finding.ts'
import type { Visit } from '../../../shared/engine/visit/visit.ts'
import { Basis, sentence } from '../../parts/Basis.tsx'
import { ChartView } from '../../parts/ChartView.tsx'
import { clinicProtocol } from '../../parts/clinicProtocol.ts'
import { Workings, workingsOf } from '../../parts/Workings.tsx'

const levelWords: Record<Level, string> = {
	stop: 'Stop and refer',
	caution: 'Caution',
	advise: 'Advice',
	note: 'Note',
}
const levelColours: Record<Level, 'error' | 'warning' | 'primary' | 'default'> = {
	stop: 'error',
	caution: 'warning',
	advise: 'primary',
	note: 'default',
}

function FindingShown({ finding }: { finding: Finding }) {
	return (
		<Box component="li" sx={{ py: 1, borderBottom: 1, borderColor: 'divider', listStyle: 'none' }}>
			<Chip
				size="small"
				variant={finding.level === 'note' ? 'outlined' : 'filled'}
				color={levelColours[finding.level]}
				label={levelWords[finding.level]}
			/>
			<Typography sx={{ ...sentence, mt: 0.5 }}>{finding.says}</Typography>
			<Basis because={finding.because} basis={finding.basis} />
		</Box>
	)
}
interface FindingsProps {
	assessment: Assessment | undefined
	trouble: string
	topics: readonly Topic[]
	/** The visit that was assessed and those before it, for the charts. */
	visit?: Visit
	earlier?: readonly Visit[]
}
export function Findings({ assessment, trouble, topics, visit, earlier }: FindingsProps) {
	const charts = useMemo(
		() =>
			assessment && visit
				? topics.flatMap((topic) =>
						chartsOf(topic, visit, earlier ?? [], assessment, clinicProtocol),
					)
				: [],
		[assessment, visit, earlier, topics],
	)
	const here = assessment?.findings.filter((finding) => topics.includes(finding.topic)) ?? []
	const urgent =
		assessment?.findings.filter(
			(finding) => finding.level === 'stop' && !topics.includes(finding.topic),
		) ?? []
	const elsewhere = (assessment?.findings.length ?? 0) - here.length - urgent.length
	const pictures = charts.map((chart) => <ChartView key={chart.id} chart={chart} />)
	return (
		<Paper
			component="aside"
			variant="outlined"
			aria-label="Findings"
			sx={{ p: 2, position: 'sticky', top: 12, maxHeight: 'calc(100vh - 24px)', overflow: 'auto' }}
			tabIndex={0}
		>
			<Typography variant="h2">Findings</Typography>
			<Typography variant="body2" color="text.secondary" role="status">
				{trouble ||
					(here.length + urgent.length === 0
						? 'Nothing to say yet on this step.'
						: `${here.length + urgent.length} on this step.`)}
			</Typography>
			{urgent.length === 0 ? pictures : null}
			<Box component="ul" sx={{ p: 0, m: 0 }}>
				{[...urgent, ...here].map((finding) => (
					<FindingShown key={finding.id} finding={finding} />
				))}
			</Box>
			{elsewhere > 0 ? (
				<Typography variant="body2" color="text.secondary" sx={{ mt: 1 }}>
					{elsewhere} more on other steps; all of them stand in Decide.
				</Typography>
			) : null}
			{urgent.length > 0 ? pictures : null}
			<Workings key={topics.join(' ')} workings={workingsOf(assessment, topics)} />
		</Paper>
	)
}
