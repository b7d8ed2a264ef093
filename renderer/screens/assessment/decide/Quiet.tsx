/** Below the questions: findings outside them, lines and actions of the clinician's own, workings. */
import { Box, Button, Stack } from '@mui/material'
import type { Topic } from '../../../../shared/engine/findings/finding.ts'
import type { Decision } from '../../../../shared/engine/visit/decisions.ts'
import { Disclosure } from '../../../parts/Disclosure.tsx'
import { Workings, workingsOf } from '../../../parts/Workings.tsx'
import type { AssessedProps, DraftProps } from '../stepProps.ts'
import { Actions, WarningSigns } from './Actions.tsx'
import { findingsElsewhere } from './answering.ts'
import { addOwn, earlierMarks, ownLines, removeLine, reword } from './decisions.ts'
import { FindingLine } from './FindingLine.tsx'
import { Section } from './Section.tsx'
import { Words } from './Words.tsx'

const rooms: readonly Topic[] = [
	'sizing',
	'ankle',
	'raise',
	'posture',
	'growth',
	'screening',
	'footwear',
	'loading',
	'insert',
]
export function Quiet({ draft, change, assessment }: AssessedProps) {
	const others = assessment ? findingsElsewhere(assessment) : []
	return (
		<Stack spacing={1} component="section" aria-label="Beside the questions">
			{others.length > 0 && (
				<Disclosure label={`Findings outside the questions (${others.length})`}>
					<Box component="ul" sx={{ m: 0, p: 0, listStyle: 'none' }}>
						{others.map((finding) => (
							<FindingLine key={finding.id} finding={finding} draft={draft} change={change} />
						))}
					</Box>
				</Disclosure>
			)}
			<EarlierMarks draft={draft} change={change} />
			<Disclosure label="Own lines, actions and warning signs">
				<Stack spacing={3} sx={{ pt: 1 }}>
					<OwnLines draft={draft} change={change} />
					<Actions draft={draft} change={change} />
					<WarningSigns draft={draft} change={change} />
				</Stack>
			</Disclosure>
			<Workings workings={workingsOf(assessment, rooms)} />
		</Stack>
	)
}
/** What an earlier version marked to be printed: it may be taken off. */
function EarlierMarks({ draft, change }: DraftProps) {
	const lines = earlierMarks(draft)
	if (lines.length === 0) return null
	return (
		<Section title="Marked to print before">
			{lines.map(({ findingId, says }) => (
				<Stack key={findingId} direction="row" spacing={1} sx={{ alignItems: 'center' }}>
					<span>{says}</span>
					<Button
						aria-label={`Take off: ${says}`}
						onClick={() => change((now) => removeLine(now, findingId))}
					>
						Take off
					</Button>
				</Stack>
			))}
		</Section>
	)
}
function OwnLines({ draft, change }: DraftProps) {
	return (
		<Section title="Lines of your own">
			<Stack spacing={1}>
				{ownLines(draft).map((line) => (
					<OwnLine key={line.findingId} line={line} change={change} />
				))}
				<Button sx={{ alignSelf: 'flex-start' }} onClick={() => change(addOwn)}>
					Add a line of your own
				</Button>
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
