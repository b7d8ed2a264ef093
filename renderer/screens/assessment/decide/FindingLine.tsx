/** A finding under its question: read there, its words changed or left out by a quiet act. */
import { Alert, Box, Button, Chip, Stack, Typography } from '@mui/material'
import { type Finding, isGrave, type Level } from '../../../../shared/engine/findings/finding.ts'
import {
	choiceWords,
	type Decision,
	hasOwnWords,
	overtakenLine,
} from '../../../../shared/engine/visit/decisions.ts'
import { readingInWords } from '../../../../shared/engine/words/reading.ts'
import { Basis, sentence } from '../../../parts/Basis.tsx'
import { levelWords } from '../levelWords.ts'
import type { DraftProps } from '../stepProps.ts'
import { type Choice, choose, lineOf, reword } from './decisions.ts'
import { Words } from './Words.tsx'

const chipColour: Record<Level, 'error' | 'warning' | 'primary' | 'default'> = {
	stop: 'error',
	caution: 'warning',
	advise: 'primary',
	note: 'default',
}
interface FindingLineProps extends DraftProps {
	finding: Finding
}
export function FindingLine({ finding, draft, change }: FindingLineProps) {
	const overtaken = overtakenLine(draft.decisions, finding.id, finding)
	const line = overtaken ? undefined : lineOf(draft, finding.id)
	return (
		<Box component="li" sx={{ borderTop: 1, borderColor: 'divider', py: 0.5 }}>
			<Basis
				because={finding.because}
				basis={finding.basis}
				head={<Says finding={finding} isOut={line?.choice === 'drop'} />}
				end={<QuietActs finding={finding} line={line} change={change} />}
			/>
			{overtaken && overtaken.choice !== 'accept' && <Overtaken line={overtaken} />}
			<OwnWords finding={finding} line={line} change={change} />
		</Box>
	)
}
export const LevelChip = ({ level }: Pick<Finding, 'level'>) => (
	<Chip
		size="small"
		variant={isGrave({ level }) ? 'filled' : 'outlined'}
		color={chipColour[level]}
		label={levelWords[level]}
		sx={{ minWidth: '4.75rem' }}
	/>
)
/** The numbers put in, each once. */
export function Reasons({ because }: Pick<Finding, 'because'>) {
	const told = [...new Set(because.map(readingInWords))]
	if (told.length === 0) return null
	return (
		<Typography variant="body2" color="text.secondary">
			because {told.join('; ')}
		</Typography>
	)
}
function Says({ finding, isOut }: { finding: Finding; isOut: boolean }) {
	return (
		<Stack
			direction="row"
			useFlexGap
			sx={{
				flexWrap: 'wrap',
				columnGap: 1.5,
				alignItems: 'baseline',
				flex: '1 1 22rem',
				minWidth: 0,
			}}
		>
			<LevelChip level={finding.level} />
			<Box sx={{ flex: '1 1 14rem' }}>
				<Typography
					sx={{
						...sentence,
						...(isOut ? { textDecoration: 'line-through', color: 'text.secondary' } : {}),
					}}
				>
					{finding.says}
				</Typography>
				<Reasons because={finding.because} />
			</Box>
		</Stack>
	)
}

interface QuietActsProps extends Pick<DraftProps, 'change'> {
	finding: Finding
	line: Decision | undefined
}
/** Characters of what is said that its name for a screen reader holds. */
const longestName = 60
function QuietActs({ finding, line, change }: QuietActsProps) {
	const about = finding.says.slice(0, longestName).trimEnd()
	const put = (choice: Choice) =>
		change((now) => choose(now, finding.id, line?.choice === choice ? null : choice, finding))
	return (
		<Box role="group" aria-label={`On the page: ${about}`}>
			<Button
				size="small"
				color="inherit"
				aria-pressed={line?.choice === 'change'}
				onClick={() => put('change')}
				sx={{ minHeight: 44 }}
			>
				Change words
			</Button>
			<Button
				size="small"
				color="inherit"
				aria-pressed={line?.choice === 'drop'}
				onClick={() => put('drop')}
				sx={{ minHeight: 44 }}
			>
				Leave out
			</Button>
		</Box>
	)
}

/** Said where a finding is another than when its words were changed or left out. */
function Overtaken({ line }: { line: Decision }) {
	return (
		<Alert severity="warning" role="note" sx={{ mt: 1 }}>
			This reads otherwise than when you {choiceWords[line.choice]} it. Choose again. Before it
			read: “{line.about}”{line.says ? ` You wrote: “${line.says}”` : ''}
		</Alert>
	)
}

function OwnWords({ finding, line, change }: QuietActsProps) {
	const put = (words: { says?: string; why?: string }) =>
		change((now) => reword(now, finding.id, words))
	if (line?.choice !== 'change' && line?.choice !== 'drop') return null
	const isChange = line.choice === 'change'
	const unsaid = isChange && !hasOwnWords(line)
	return (
		<Stack spacing={1.5} sx={{ my: 1 }}>
			{isChange && (
				<Words
					label="Words that stand"
					lines
					max={1000}
					value={line.says ?? ''}
					error={unsaid}
					hint={unsaid ? 'Write other words here, or press Change words again.' : ''}
					set={(says) => put({ says })}
				/>
			)}
			<Words label="Why (optional)" max={500} value={line.why ?? ''} set={(why) => put({ why })} />
		</Stack>
	)
}
