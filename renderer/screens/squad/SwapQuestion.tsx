/** Asked where a measure fits neither the player's last visit nor the other foot. */
import { Alert, Checkbox, FormControlLabel, Typography } from '@mui/material'
import type { swapQuestions } from '../../../shared/desk/squad/swapped.ts'
import { limitInWords } from '../../../shared/engine/words/reading.ts'

interface SwapQuestionProps {
	name: string
	questions: ReturnType<typeof swapQuestions>
	sure: boolean
	setSure: (sure: boolean) => void
}
export function SwapQuestion({ name, questions, sure, setSure }: SwapQuestionProps) {
	return (
		<Alert severity="warning" role="alert">
			<Typography sx={{ fontWeight: 600 }}>
				Is this really {name}? Perhaps two players were swapped, or left and right.
			</Typography>
			{questions.map(({ says, basis }) => (
				<Typography key={says}>
					{says} (asked at more than {limitInWords(basis)}; {basis.source})
				</Typography>
			))}
			<FormControlLabel
				control={<Checkbox checked={sure} onChange={(event) => setSure(event.target.checked)} />}
				label="Name and number asked again, measured again: it is right"
			/>
		</Alert>
	)
}
