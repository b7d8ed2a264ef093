/**
 * Below the result: what was found on this step, each with its basis one key away; then its charts
 * and how its numbers were worked out.
 */
import { Box, Chip, Typography } from '@mui/material'
import { useMemo } from 'react'
import { chartsOf } from '../../../../shared/engine/charts/charts.ts'
import type { Assessment } from '../../../../shared/engine/findings/assessment.ts'
import type { Finding, Level } from '../../../../shared/engine/findings/finding.ts'
import type { Visit } from '../../../../shared/engine/visit/visit.ts'
import { Basis, sentence } from '../../../parts/Basis.tsx'
import { ChartView } from '../../../parts/ChartView.tsx'
import { clinicProtocol } from '../../../parts/clinicProtocol.ts'
import { Workings, workingsOf } from '../../../parts/Workings.tsx'
import type { Step } from '../steps.ts'

const levelWords: Record<Level, string> = {
	stop: 'Stop and refer',
	caution: 'Caution',
	advise: 'Advise',
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
interface StepFindingsProps {
	assessment: Assessment | undefined
	/** The visit that was assessed and those before it, for the charts. */
	visit: Visit
	earlier: readonly Visit[]
	step: Step
}
/** What was found on this step, most consequential first; charts, and how it was worked out. */
export function StepFindings({ assessment, visit, earlier, step }: StepFindingsProps) {
	const { topics } = step
	const charts = useMemo(
		() =>
			assessment
				? topics.flatMap((topic) => chartsOf(topic, visit, earlier, assessment, clinicProtocol))
				: [],
		[assessment, visit, earlier, topics],
	)
	const here = assessment?.findings.filter((finding) => topics.includes(finding.topic)) ?? []
	return (
		<Box
			component="section"
			aria-label="Findings"
			tabIndex={0}
			sx={{ flex: '1 1 0', minHeight: 0, overflow: 'auto' }}
		>
			<Typography variant="body2" color="text.secondary" role="status">
				{here.length === 0
					? 'Nothing found on this step yet.'
					: `${here.length} found on this step.`}
			</Typography>
			<Box component="ul" sx={{ p: 0, m: 0 }}>
				{here.map((finding) => (
					<FindingShown key={finding.id} finding={finding} />
				))}
			</Box>
			{charts.map((chart) => (
				<ChartView key={chart.id} chart={chart} />
			))}
			<Workings key={step.name} workings={workingsOf(assessment, topics)} />
		</Box>
	)
}
