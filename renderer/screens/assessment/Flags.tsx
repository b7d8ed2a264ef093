/**
 * The warning-sign questions, before any test. Not answered is not asked, never no. What everybody
 * is asked comes first, then what a recorded condition opens, then what a complaint unfolds.
 */
import { Box, Paper, ToggleButton, Typography } from '@mui/material'
import { useState } from 'react'
import { complaints } from '../../../shared/engine/screening/complaints.table.ts'
import { capital } from '../../../shared/engine/words/words.ts'
import { FieldRow } from '../../parts/MeasureField.tsx'
import { coreOf, lineOf } from './coreAsked.ts'
import { AskedInPrivate, AskedOfEveryone } from './FlagsAsked.tsx'
import { OpenedQuestions } from './FlagsGroup.tsx'
import { OpenHolds } from './FlagsHolds.tsx'
import { goOnByAnswer } from './flagsKeys.ts'
import { type Opened, openedQuestions } from './flagsOpened.ts'
import type { DraftProps, StepProps } from './stepProps.ts'

const sheet = { px: 2, py: 1.5 }
/** Open by themselves: nobody has to find them. */
function ByConditions({ opened, ...props }: { opened: readonly Opened[] } & DraftProps) {
	if (opened.length === 0) return null
	const names = [...new Set(opened.flatMap(({ by }) => by))]
	return (
		<Paper
			component="section"
			aria-label="Asked for what is recorded"
			variant="outlined"
			sx={sheet}
		>
			<Typography variant="h2">Asked for what is recorded</Typography>
			<Typography variant="body2" color="text.secondary" sx={{ mb: 0.5 }}>
				{capital(names.join('; '))}
			</Typography>
			<OpenedQuestions opened={opened} {...props} />
		</Paper>
	)
}
interface ByComplaintProps extends DraftProps {
	opened: readonly Opened[]
	chosen: readonly string[]
	choose: (complaints: readonly string[]) => void
}
function ByComplaint({ opened, chosen, choose, draft, change }: ByComplaintProps) {
	const toggle = (id: string) =>
		choose(chosen.includes(id) ? chosen.filter((each) => each !== id) : [...chosen, id])
	return (
		<Paper variant="outlined" sx={sheet}>
			<Typography variant="h2">What the player complains of</Typography>
			<FieldRow paths={['complaint']} draft={draft} change={change} />
			<Typography variant="body2" color="text.secondary">
				Choose what fits; only its questions open.
			</Typography>
			<Box
				role="group"
				aria-label="Complaints"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.75, my: 1 }}
			>
				{complaints.map(({ id, says }) => (
					<ToggleButton
						key={id}
						value={id}
						color="primary"
						selected={chosen.includes(id)}
						onChange={() => toggle(id)}
						sx={{ px: 1.25, lineHeight: 1.25, textTransform: 'none' }}
					>
						{says}
					</ToggleButton>
				))}
			</Box>
			<OpenedQuestions opened={opened} draft={draft} change={change} />
			{opened.length === 0 ? (
				<Typography color="text.secondary">No complaint chosen.</Typography>
			) : null}
		</Paper>
	)
}
export function Flags({ draft, change, assessment }: StepProps) {
	const [chosen, setChosen] = useState<readonly string[]>([])
	const lines = coreOf({ draft, assessment }).flatMap(
		(question) => lineOf(question, draft.visit) ?? [],
	)
	const { byConditions, byComplaint } = openedQuestions(draft.visit, chosen, lines)
	const props = { draft, change }
	return (
		<Box sx={{ display: 'grid', gap: 1.5 }} onKeyDown={goOnByAnswer}>
			<AskedOfEveryone
				{...props}
				assessment={assessment}
				open={(complaint) => setChosen((now) => [...new Set([...now, complaint])])}
			/>
			<ByConditions opened={byConditions} {...props} />
			<ByComplaint opened={byComplaint} chosen={chosen} choose={setChosen} {...props} />
			<AskedInPrivate {...props} />
			<OpenHolds {...props} assessment={assessment} />
		</Box>
	)
}
