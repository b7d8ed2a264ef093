/** What a plan says: its findings with their reasons, those that ask for something first. */
import { Alert, Box, Typography } from '@mui/material'
import type { Finding, Level } from '../../../shared/engine/findings/finding.ts'
import { readingInWords } from '../../../shared/engine/words/reading.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { restsOn } from '../../parts/Workings.tsx'

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
	const asks = sorted.filter(({ level }) => level !== 'note')
	const notes = sorted.filter(({ level }) => level === 'note')
	return (
		<Box component="section" aria-labelledby="season-findings">
			<Typography variant="h2" id="season-findings">
				{asks.length === 0 ? 'Nothing needs you' : `Needs you (${asks.length})`}
			</Typography>
			<Findings of={asks} />
			{notes.length > 0 && (
				<Box
					component="details"
					sx={{ mt: 0.5, '& summary': { cursor: 'pointer', minHeight: 28 } }}
				>
					<summary>Notes of the plan ({notes.length})</summary>
					<Findings of={notes} />
				</Box>
			)}
		</Box>
	)
}
function Findings({ of }: { of: readonly Finding[] }) {
	return (
		<Box
			sx={{
				display: 'grid',
				gridTemplateColumns: 'repeat(auto-fit, minmax(min(30rem, 100%), 1fr))',
				gap: 1,
				mt: 0.5,
			}}
		>
			{of.map((finding) => (
				<Alert
					key={finding.id}
					severity={severities[finding.level]}
					sx={{ py: 0, '& .MuiAlert-message': { width: '100%' } }}
				>
					<strong>{capital(finding.level)}.</strong> {finding.says}
					<Why finding={finding} />
				</Alert>
			))}
		</Box>
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
