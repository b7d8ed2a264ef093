/** What a plan says: what changed by it, and its findings with their reasons. */
import { Alert, Box, Paper, Stack, Typography } from '@mui/material'
import type { Finding, Level } from '../../../shared/engine/findings/finding.ts'
import { readingInWords } from '../../../shared/engine/words/reading.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { restsOn } from '../../parts/Workings.tsx'
import type { Opened } from './useSeasonEdits.ts'

type Planned = NonNullable<Opened['planned']>

interface PlanChangesProps {
	changes: Planned['changes']
	/** Whether they are shown without being asked for. */
	open: boolean
}
export function PlanChanges({ changes, open }: PlanChangesProps) {
	return (
		<Paper component="section" variant="outlined" aria-labelledby="changes" sx={{ p: 2 }}>
			<Typography variant="h2" id="changes">
				Changed by the last planning ({changes.length})
			</Typography>
			<Box component="details" open={open} sx={{ mt: 0.5 }}>
				<summary>In words</summary>
				<Box component="ul" sx={{ m: 0, pl: 2.5, maxHeight: 260, overflow: 'auto' }}>
					{changes.map(({ says }) => (
						<li key={says}>{says}</li>
					))}
				</Box>
			</Box>
		</Paper>
	)
}

/** In the order in which they are told. */
const severities: Record<Level, 'error' | 'warning' | 'info'> = {
	stop: 'error',
	caution: 'warning',
	advise: 'info',
	note: 'info',
}
const order = Object.keys(severities)

export function PlanFindings({ findings }: { findings: readonly Finding[] }) {
	if (findings.length === 0) return null
	const sorted = findings.toSorted(
		(left, right) => order.indexOf(left.level) - order.indexOf(right.level),
	)
	return (
		<Paper component="section" variant="outlined" aria-labelledby="season-findings" sx={{ p: 2 }}>
			<Typography variant="h2" id="season-findings">
				Findings of the plan ({sorted.length})
			</Typography>
			<Stack spacing={1} sx={{ mt: 1 }}>
				{sorted.map((finding) => (
					<Alert
						key={finding.id}
						severity={severities[finding.level]}
						sx={{ '& .MuiAlert-message': { width: '100%' } }}
					>
						<strong>{capital(finding.level)}.</strong> {finding.says}
						<Why finding={finding} />
					</Alert>
				))}
			</Stack>
		</Paper>
	)
}

function Why({ finding: { because, basis } }: { finding: Finding }) {
	if (because.length === 0 && !basis) return null
	return (
		<Box component="details" sx={{ mt: 0.5, '& summary': { cursor: 'pointer', minHeight: 28 } }}>
			<summary>Why ({because.length})</summary>
			<Box component="ul" sx={{ m: 0, pl: 2.5 }}>
				{because.map((each) => (
					<li key={`${each.measure} ${each.side} ${each.at} ${each.value}`}>
						{readingInWords(each)}
					</li>
				))}
			</Box>
			<Typography variant="body2">{restsOn(basis)}</Typography>
		</Box>
	)
}
