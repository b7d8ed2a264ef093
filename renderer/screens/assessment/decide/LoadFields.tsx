/** How much is played and trained, as the clinician sets it; an empty field says nothing. */
import { Stack, TextField } from '@mui/material'
import { useState } from 'react'
import type { LoadFields as Load } from '../../../../shared/engine/visit/answers.ts'
import { typedText, typeFields } from './answering.ts'
import type { FieldsProps } from './ChangeFields.tsx'
import { type LoadTexts, loadNumbers, readLoad } from './readLoad.ts'
import { Words } from './Words.tsx'

const labels: Readonly<Record<(typeof loadNumbers)[number], string>> = {
	sessionsPerWeek: 'Sessions a week, at most',
	minutesPerSession: 'Minutes a session, at most',
	daysOffPerWeek: 'Days a week off, at least',
	weeks: 'For how many weeks',
}
const longestSteps = 1300

export function LoadFields({ draft, change, question, fields }: FieldsProps) {
	const load: Load = fields.load ?? {}
	const text = (name: (typeof loadNumbers)[number]) => typedText(draft, question, name, load[name])
	const kept = typedText(draft, question, 'steps', load.steps?.join('\n'))
	// a line that was only begun is no step yet, and stays under the hand
	const [steps, setSteps] = useState(kept)
	const texts: LoadTexts = {
		sessionsPerWeek: text('sessionsPerWeek'),
		minutesPerSession: text('minutesPerSession'),
		daysOffPerWeek: text('daysOffPerWeek'),
		weeks: text('weeks'),
		steps: kept,
	}
	const { wrong } = readLoad(texts)
	const put = (patch: Partial<LoadTexts>) => {
		const next = { ...texts, ...patch }
		const { load: read } = readLoad(next)
		change((now) => typeFields(now, question, next, read && { load: read }))
	}
	return (
		<Stack spacing={2}>
			<Stack direction="row" useFlexGap sx={{ gap: 2, flexWrap: 'wrap' }}>
				{loadNumbers.map((name) => (
					<TextField
						key={name}
						size="small"
						label={labels[name]}
						value={texts[name]}
						error={Boolean(wrong[name])}
						helperText={wrong[name]}
						onChange={(event) => put({ [name]: event.target.value })}
						slotProps={{
							htmlInput: { inputMode: 'numeric', autoComplete: 'off' },
							inputLabel: { shrink: true },
						}}
						sx={{ width: '13rem' }}
					/>
				))}
			</Stack>
			<Words
				label="Steps back, one a line, in your words"
				lines
				max={longestSteps}
				value={steps}
				error={Boolean(wrong.steps)}
				hint={wrong.steps ?? ''}
				set={(typed) => {
					setSteps(typed)
					put({ steps: typed })
				}}
			/>
		</Stack>
	)
}
