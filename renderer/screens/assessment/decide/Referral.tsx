/** The signs that stop: what was done about them is written before anything can be signed. */
import { Alert, AlertTitle, Stack, Typography } from '@mui/material'
import { refers } from '../../../../shared/engine/report/signing.ts'
import { actionWords } from '../../../../shared/engine/words/words.ts'
import type { AssessedProps } from '../stepProps.ts'
import { decide } from './decisions.ts'
import { Words } from './Words.tsx'

export function Referral({ draft, change, assessment }: AssessedProps) {
	if (!assessment || !refers(assessment)) return null
	const done = draft.decisions.referralDone ?? ''
	const signs = assessment.screening.items.filter(
		(item) => item.state === 'yes' && item.action === assessment.screening.action,
	)
	return (
		<Stack spacing={1.5}>
			<Alert severity="error" role="alert">
				<AlertTitle>Stop: {actionWords[assessment.screening.action]}</AlertTitle>
				{signs.map((sign) => (
					<Typography key={`${sign.id} ${sign.side}`} variant="body2">
						{sign.says}
						{sign.side === 'left' || sign.side === 'right' ? ` (${sign.side})` : ''}
					</Typography>
				))}
				<Typography variant="body2">
					Act on this before footwear. The record cannot be signed until you write what was done.
				</Typography>
			</Alert>
			<Words
				label="What was done about it"
				lines
				required
				max={1000}
				error={!done.trim()}
				value={done}
				set={(text) => change((now) => decide(now, { referralDone: text || undefined }))}
			/>
		</Stack>
	)
}
