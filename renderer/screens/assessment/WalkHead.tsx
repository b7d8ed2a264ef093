/** Whose visit it is, whether it is saved, and the steps as buttons. */

import { Box, Button, Typography } from '@mui/material'
import { dayInWords } from '../../../shared/engine/plain/days.ts'
import { ageYears } from '../../../shared/engine/visit/age.ts'
import { fullName } from '../../../shared/engine/words/names.ts'
import { numberOf, type Step } from './steps.ts'
import type { OpenDraft } from './useDraft.ts'

interface WalkHeadProps {
	open: OpenDraft
	steps: readonly Step[]
	/** The step on screen. */
	step: Step
	signed: boolean
	goTo: (name: string) => void
}
export function WalkHead({ open, steps, step, signed, goTo }: WalkHeadProps) {
	const { saved } = open
	const { player, visitDate } = open.content.visit
	return (
		<>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 2, alignItems: 'baseline', mb: 1 }}>
				<Typography variant="h2" component="p">
					{fullName(player)}
				</Typography>
				<Typography color="text.secondary">
					{ageYears(player.birthDate, visitDate)} years, {player.sex}, visit of{' '}
					{dayInWords(visitDate)}
				</Typography>
				<Typography
					role="status"
					color={saved.state === 'failed' ? 'error' : 'text.secondary'}
					sx={{ ml: 'auto' }}
				>
					{signed ? 'Signed' : saved.says}
				</Typography>
			</Box>
			<Box
				component="nav"
				aria-label="Steps"
				sx={{ display: 'flex', flexWrap: 'wrap', gap: 0.5, mb: 2 }}
			>
				{steps.map(({ name }) => (
					<Button
						key={name}
						disabled={signed}
						variant={name === step.name ? 'contained' : 'text'}
						aria-current={name === step.name ? 'step' : undefined}
						aria-keyshortcuts={`Alt+${numberOf(name)}`}
						onClick={() => goTo(name)}
					>
						<Box component="span" aria-hidden sx={{ mr: 0.75, opacity: 0.75, fontWeight: 400 }}>
							{numberOf(name)}
						</Box>
						{name}
					</Button>
				))}
			</Box>
		</>
	)
}
