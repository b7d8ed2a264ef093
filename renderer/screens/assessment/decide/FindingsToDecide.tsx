/** The findings by level, each to be decided, and the lines that the clinician adds. */
import { Button, Stack, Typography } from '@mui/material'
import type { Decision } from '../../../../shared/engine/visit/decisions.ts'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import {
	acceptQuiet,
	addOwn,
	findingsToDecide,
	leftQuiet,
	levels,
	ownLines,
	removeLine,
	reword,
	undecidedFindings,
} from './decisions.ts'
import { FindingRow } from './FindingRow.tsx'
import { Section } from './Section.tsx'
import { Words } from './Words.tsx'

export function FindingsToDecide({ draft, change, assessment }: AssessedProps) {
	const findings = assessment ? findingsToDecide(assessment) : []
	const left = assessment ? undecidedFindings(draft, assessment).length : 0
	return (
		<Section title="Findings">
			<Stack spacing={2}>
				<Stack
					direction="row"
					spacing={2}
					useFlexGap
					sx={{ alignItems: 'center', flexWrap: 'wrap' }}
				>
					<Typography role="status" sx={{ fontWeight: 600 }}>
						{findings.length - left} of {findings.length} decided
					</Typography>
					<Button
						variant="outlined"
						disabled={leftQuiet(draft, findings).length === 0}
						onClick={() => change((now) => acceptQuiet(now, findings))}
					>
						Accept the notes and advice left undecided
					</Button>
				</Stack>
				{findings.length === 0 && <Typography color="text.secondary">No findings yet.</Typography>}
				{levels.map(({ level, title }) => {
					const ofLevel = findings.filter((finding) => finding.level === level)
					return (
						ofLevel.length > 0 && (
							<Stack key={level} spacing={1}>
								<Typography variant="h3">{title}</Typography>
								{ofLevel.map((finding) => (
									<FindingRow key={finding.id} finding={finding} draft={draft} change={change} />
								))}
							</Stack>
						)
					)
				})}
				<Stack spacing={1}>
					{ownLines(draft).map((line) => (
						<OwnLine key={line.findingId} line={line} change={change} />
					))}
					<Button sx={{ alignSelf: 'flex-start' }} onClick={() => change(addOwn)}>
						Add a line of your own
					</Button>
				</Stack>
			</Stack>
		</Section>
	)
}

interface OwnLineProps extends Pick<DraftProps, 'change'> {
	line: Decision
}
function OwnLine({ line, change }: OwnLineProps) {
	const number = line.findingId.replace('own.', '')
	return (
		<Stack direction="row" spacing={1} sx={{ alignItems: 'flex-start' }}>
			<Words
				label={`Your own line ${number}`}
				lines
				max={1000}
				value={line.says ?? ''}
				hint={line.says?.trim() ? '' : 'Write the line, or remove it.'}
				set={(says) => change((now) => reword(now, line.findingId, { says }))}
			/>
			<Button
				aria-label={`Remove your own line ${number}`}
				onClick={() => change((now) => removeLine(now, line.findingId))}
			>
				Remove
			</Button>
		</Stack>
	)
}
