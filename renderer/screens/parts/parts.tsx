/**
 * Every part of the screens in every state, side by side, for whoever changes one: in the demo at
 * #/parts, and in the browser tests.
 */
import { Stack, Typography } from '@mui/material'
import { AnswerStates } from './AnswerStates.tsx'
import { FindingStates } from './FindingStates.tsx'
import { FormStates } from './FormStates.tsx'
import { MeasureStates } from './MeasureStates.tsx'
import { PanelStates } from './PanelStates.tsx'

export function Parts() {
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Parts</Typography>
			<AnswerStates />
			<FormStates />
			<PanelStates />
			<MeasureStates />
			<FindingStates />
		</Stack>
	)
}
