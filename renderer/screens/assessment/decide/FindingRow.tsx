/** One finding with its basis, the choice about it, and the words that the choice asks for. */
import { Alert, Box, Chip, Paper, Stack, Typography } from '@mui/material'
import type { Finding, Level } from '../../../../shared/engine/findings/finding.ts'
import { isDecided, quiet } from '../../../../shared/engine/report/signing.ts'
import {
	choiceWords,
	type Decision,
	overtakenLine,
} from '../../../../shared/engine/visit/decisions.ts'
import { Basis, sentence } from '../../../parts/Basis.tsx'
import type { DraftProps } from '../stepProps.ts'
import { Choose } from './Choose.tsx'
import { type Choice, choose, levels, lineOf, reword } from './decisions.ts'
import { Words } from './Words.tsx'

const chipColour: Record<Level, 'error' | 'warning' | 'primary' | 'default'> = {
	stop: 'error',
	caution: 'warning',
	advise: 'primary',
	note: 'default',
}
interface FindingRowProps extends DraftProps {
	finding: Finding
}

export function FindingRow({ finding, draft, change }: FindingRowProps) {
	const overtaken = overtakenLine(draft.decisions, finding.id, finding)
	const line = overtaken ? undefined : lineOf(draft, finding.id)
	const choice = line && line.choice !== 'add' ? line.choice : undefined
	return (
		<Paper variant="outlined" sx={{ px: 2, py: 1 }}>
			<Basis
				because={finding.because}
				basis={finding.basis}
				head={<Says finding={finding} dropped={choice === 'drop'} />}
				end={
					<Choose
						about={finding.says}
						value={choice}
						set={(next) => change((now) => choose(now, finding.id, next, finding))}
					/>
				}
			/>
			{overtaken && <Overtaken line={overtaken} />}
			<OwnWords finding={finding} choice={choice} line={line} draft={draft} change={change} />
		</Paper>
	)
}

function Says({ finding, dropped }: { finding: Finding; dropped: boolean }) {
	return (
		<Stack
			direction="row"
			useFlexGap
			sx={{
				flexWrap: 'wrap',
				columnGap: 1.5,
				rowGap: 0.5,
				alignItems: 'center',
				flex: '1 1 22rem',
				minWidth: 0,
			}}
		>
			<Chip
				size="small"
				variant={quiet(finding) ? 'outlined' : 'filled'}
				color={chipColour[finding.level]}
				label={levels.find(({ level }) => level === finding.level)?.title}
				sx={{ minWidth: '4.75rem' }}
			/>
			<Typography
				sx={{
					...sentence,
					flex: '1 1 14rem',
					...(dropped ? { textDecoration: 'line-through', color: 'text.secondary' } : {}),
				}}
			>
				{finding.says}
			</Typography>
		</Stack>
	)
}

/** Said where a finding is another than when it was decided. */
function Overtaken({ line }: { line: NonNullable<ReturnType<typeof overtakenLine>> }) {
	return (
		<Alert severity="warning" role="note" sx={{ mt: 1 }}>
			This reads otherwise than when you {choiceWords[line.choice]} it. Decide again. Before it
			read: “{line.about}”{line.says ? ` You wrote: “${line.says}”` : ''}
		</Alert>
	)
}

interface OwnWordsProps extends FindingRowProps {
	choice: Choice | undefined
	line: Decision | undefined
}
function OwnWords({ finding, choice, line, draft, change }: OwnWordsProps) {
	const unsaid = !isDecided(draft.decisions, finding.id, finding)
	const put = (words: { says?: string; why?: string }) =>
		change((now) => reword(now, finding.id, words))
	if (choice === 'change')
		return (
			<Stack spacing={1.5} sx={{ mt: 1 }}>
				<Words
					label="Words that stand"
					lines
					max={1000}
					value={line?.says ?? ''}
					error={unsaid}
					hint={unsaid ? 'Not decided yet: write other words here, or choose Accept or Drop.' : ''}
					set={(says) => put({ says })}
				/>
				<Words label="Why" max={500} value={line?.why ?? ''} set={(why) => put({ why })} />
			</Stack>
		)
	if (choice === 'drop')
		return (
			<Box sx={{ mt: 1 }}>
				<Words
					label="Why (optional)"
					max={500}
					value={line?.why ?? ''}
					set={(why) => put({ why })}
				/>
			</Box>
		)
	return null
}
